"""The learner's own pages: practice, check, attempts and record."""

from django.urls import path

from quizzes import check_views, review_views, views

app_name = "quizzes"
urlpatterns = [
    path("practice-across/", views.across, name="across"),
    path("practice-across/next/", views.across_next, name="across-next"),
    path("practice/<slug:competency>/", views.practice, name="practice"),
    path("practice/<slug:competency>/start/", views.practice_start, name="practice-start"),
    path("practice/<slug:competency>/review/", views.review_start, name="review-start"),
    path("check/<slug:competency>/", check_views.check, name="check"),
    path("check/<slug:competency>/start/", check_views.check_start, name="check-start"),
    path("course-check/", check_views.course_check, name="course-check"),
    path("course-check/start/", check_views.course_check_start, name="course-check-start"),
    path("attempts/<int:pk>/", views.attempt, name="attempt"),
    path("attempts/<int:pk>/answer/", views.answer, name="answer"),
    path("attempts/<int:pk>/hint/", views.hint, name="hint"),
    path("attempts/<int:pk>/doubt/", review_views.doubt, name="doubt"),
    path("checks/<int:pk>/", check_views.sitting, name="sitting"),
    path("record/", views.record, name="record"),
]
