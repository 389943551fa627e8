"""The desk's addresses."""

from django.urls import path

from course.desks import questions, reviews, supervision, teaching, views

app_name = "desks"
urlpatterns = [
    path("", views.cohorts, name="cohorts"),
    path("rules/", views.rules, name="rules"),
    path("problems/", views.families, name="families"),
    path("problems/<slug:family>/<slug:system>/<int:seed>/", views.problem, name="problem"),
    path("questions/", questions.items, name="items"),
    path("questions/<slug:family>/", questions.item, name="item"),
    path("questions/<slug:family>/<slug:question>/", questions.item, name="question"),
    path("cohorts/<int:pk>/", views.board, name="board"),
    path("cohorts/<int:pk>/teaching/", teaching.teaching, name="teaching"),
    path("cohorts/<int:pk>/teaching/assign/", teaching.assign, name="assign"),
    path("cohorts/<int:pk>/supervised/", supervision.slots, name="slots"),
    path("cohorts/<int:pk>/supervised/<int:slot>/close/", supervision.close_slot, name="close-slot"),
    path("people/<int:pk>/accommodations/", supervision.accommodations, name="accommodations"),
    path("people/<int:pk>/", views.trainee, name="trainee"),
    path("people/<int:pk>/<slug:competency>/open-check/", views.open_check, name="open-check"),
    path("people/<int:pk>/decide/", views.decide, name="decide"),
    path("reviews/", reviews.reviews, name="reviews"),
    path("attempts/<int:pk>/review/", reviews.review, name="review"),
    path("attempts/<int:pk>/", views.attempt, name="attempt"),
]
