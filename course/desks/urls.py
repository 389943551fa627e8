"""The desk's addresses."""

from django.urls import path

from course.desks import views

app_name = "desks"
urlpatterns = [
    path("", views.cohorts, name="cohorts"),
    path("rules/", views.rules, name="rules"),
    path("problems/", views.families, name="families"),
    path("problems/<slug:family>/<slug:system>/<int:seed>/", views.problem, name="problem"),
    path("cohorts/<int:pk>/", views.board, name="board"),
    path("people/<int:pk>/", views.trainee, name="trainee"),
    path("people/<int:pk>/<slug:competency>/open-check/", views.open_check, name="open-check"),
    path("people/<int:pk>/decide/", views.decide, name="decide"),
    path("attempts/<int:pk>/", views.attempt, name="attempt"),
]
