"""The exports' addresses."""

from django.urls import path

from course.exports import views

app_name = "exports"
urlpatterns = [
    path("", views.index, name="index"),
    path("<slug:slug>/", views.download, name="download"),
]
