"""Signing in, one's own settings, and the office's roster."""

from django.urls import path

from course.people import office, views

app_name = "people"
urlpatterns = [
    path("sign-in/", views.sign_in, name="sign-in"),
    path("sign-out/", views.sign_out, name="sign-out"),
    path("password/", views.password, name="password"),
    path("password/forgotten/", views.password_forgotten, name="password-forgotten"),
    path("password/sent/", views.password_sent, name="password-sent"),
    path("password/set/<uidb64>/<token>/", views.password_set, name="password-set"),
    path("settings/", views.units, name="units"),
    path("roster/", office.roster, name="roster"),
    path("roster/add/", office.person_add, name="person-add"),
    path("roster/<int:pk>/", office.person, name="person"),
    path("roster/<int:pk>/link/", office.person_link, name="person-link"),
    path("cohorts/", office.cohorts, name="cohorts"),
    path("cohorts/add/", office.cohort_add, name="cohort-add"),
    path("cohorts/<int:pk>/", office.cohort, name="cohort"),
]
