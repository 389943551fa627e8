"""The addresses of the site; each room keeps its own."""

from django.urls import include, path

from course.lessons import reference
from course.lessons import views as lessons

urlpatterns = [
    path("", lessons.home, name="home"),
    path("", include("quizzes.urls")),
    path("glossary/", reference.glossary, name="glossary"),
    path("search/", reference.find, name="search"),
    path("booklet/", reference.booklet, name="booklet"),
    path("lessons/", include("course.lessons.urls")),
    path("class/", include("course.classroom.urls")),
    path("papers/", include("course.papers.urls")),
    path("desk/", include("course.desks.urls")),
    path("exports/", include("course.exports.urls")),
    path("set-checks/", include("course.appointments.urls")),
    path("sign-off/", include("course.signing.urls")),
    path("people/", include("course.people.urls")),
]
