"""The addresses of the site; each room keeps its own."""

from django.urls import include, path

from course.lessons import views as lessons

urlpatterns = [
    path("", lessons.home, name="home"),
    path("", include("quizzes.urls")),
    path("lessons/", include("course.lessons.urls")),
    path("desk/", include("course.desks.urls")),
    path("exports/", include("course.exports.urls")),
    path("people/", include("course.people.urls")),
]
