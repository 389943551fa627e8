"""The site's addresses and one more: a view that does nothing but return the bytes it was given."""

from django.http import HttpResponse
from django.urls import include, path

BYTES = [b""]


def bare(request):
    return HttpResponse(BYTES[0])


urlpatterns = [path("bare/", bare), path("", include("course.urls"))]
