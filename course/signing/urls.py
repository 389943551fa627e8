"""The addresses of signing off and releasing for a cohort at once."""

from django.urls import path

from course.signing import views

app_name = "signing"
urlpatterns = [
    path("<int:pk>/", views.index, name="index"),
    path("<int:pk>/holds/", views.holds, name="holds"),
    path("<int:pk>/<slug:competency>/", views.sign, name="sign"),
]
