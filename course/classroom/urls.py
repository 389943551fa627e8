"""The classroom's addresses: short for the hand slates, since they are read off the wall."""

from django.urls import path

from course.classroom import polls, views, wall

app_name = "classroom"
urlpatterns = [
    path("", views.mine, name="mine"),
    path("<int:pk>/", views.hand, name="hand"),
    path("<int:pk>/answer/", views.answer, name="answer"),
    path("<int:pk>/news/", polls.hand, name="hand-news"),
    path("<int:pk>/wall/", wall.wall, name="wall"),
    path("<int:pk>/wall/put-up/", wall.put_up, name="put-up"),
    path("<int:pk>/wall/move/", wall.move, name="move"),
    path("<int:pk>/wall/step/", wall.step, name="step"),
    path("<int:pk>/wall/news/", polls.wall, name="wall-news"),
]
