"""The addresses of set checks."""

from django.urls import path

from course.appointments import views

app_name = "appointments"
urlpatterns = [
    path("cohorts/<int:pk>/", views.index, name="index"),
    path("cohorts/<int:pk>/new/", views.new, name="new"),
    path("draws/<slug:family>/<slug:system>/<int:first>/", views.draws, name="draws"),
    path("<int:pk>/", views.appointment, name="appointment"),
    path("<int:pk>/change/", views.change, name="change"),
    path("<int:pk>/send/", views.send, name="send"),
    path("<int:pk>/discard/", views.discard, name="discard"),
    path("<int:pk>/take-back/", views.take_back, name="take-back"),
]
