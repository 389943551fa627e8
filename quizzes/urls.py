"""The learner's own pages: practice, check, attempts and record."""

from django.urls import path

from quizzes import views

app_name = "quizzes"
urlpatterns = [
    path("practice/<slug:competency>/", views.practice, name="practice"),
    path("practice/<slug:competency>/start/", views.practice_start, name="practice-start"),
    path("practice/<slug:competency>/review/", views.review_start, name="review-start"),
    path("check/<slug:competency>/", views.check, name="check"),
    path("check/<slug:competency>/start/", views.check_start, name="check-start"),
    path("attempts/<int:pk>/", views.attempt, name="attempt"),
    path("attempts/<int:pk>/answer/", views.answer, name="answer"),
    path("attempts/<int:pk>/hint/", views.hint, name="hint"),
    path("checks/<int:pk>/", views.sitting, name="sitting"),
    path("record/", views.record, name="record"),
]
