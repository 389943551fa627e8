"""The lessons."""

from django.urls import path

from course.lessons import views

app_name = "lessons"
urlpatterns = [
    path("<slug:slug>/", views.lesson, name="lesson"),
    path("<slug:slug>/place/", views.place, name="place"),
]
