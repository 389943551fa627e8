"""The addresses of paper checks."""

from django.urls import path

from course.papers import views

app_name = "papers"
urlpatterns = [
    path("cohorts/<int:pk>/", views.runs, name="runs"),
    path("<int:pk>/", views.run, name="run"),
    path("<int:pk>/papers.pdf", views.sheets, name="sheets"),
    path("<int:pk>/key.pdf", views.key, name="key"),
    path("enter/", views.find, name="find"),
    path("enter/<slug:code>/", views.enter, name="enter"),
]
