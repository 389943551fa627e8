"""Signing in and out, passwords, and one's own settings."""

from typing import Any

from django.contrib import messages
from django.contrib.auth import views as auth
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse_lazy
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_http_methods

from course.people.forms import ForgottenForm, SignInForm, UnitsForm
from course.people.http import PersonRequest


class OwnPassword(auth.PasswordChangeView):
    """A new password beside the old one."""

    template_name = "people/password.html"
    success_url = reverse_lazy("people:units")

    def form_valid(self, form: Any) -> HttpResponse:
        messages.success(self.request, "Your password is changed.")
        return super().form_valid(form)


class SetPassword(auth.PasswordResetConfirmView):
    """A password set from a one-time link."""

    template_name = "people/password_set.html"
    success_url = reverse_lazy("people:sign-in")

    def form_valid(self, form: Any) -> HttpResponse:
        messages.success(self.request, "Your password is set. Sign in with it.")
        return super().form_valid(form)


sign_in = auth.LoginView.as_view(
    authentication_form=SignInForm, template_name="people/sign_in.html", redirect_authenticated_user=True
)
sign_out = auth.LogoutView.as_view()
password = OwnPassword.as_view()
password_set = SetPassword.as_view()
password_forgotten = auth.PasswordResetView.as_view(
    form_class=ForgottenForm,
    template_name="people/password_forgotten.html",
    email_template_name="people/password_mail.txt",
    subject_template_name="people/password_mail_subject.txt",
    success_url=reverse_lazy("people:password-sent"),
)
password_sent = auth.PasswordResetDoneView.as_view(template_name="people/password_sent.html")


@require_http_methods(["GET", "HEAD", "POST"])
def units(request: PersonRequest) -> HttpResponse:
    """One's own settings: the units of one's problems. Goes back to the page it was opened from."""
    back = _same_site(request, request.POST.get("next") or request.GET.get("next") or "")
    form = UnitsForm(request.POST or None, initial={"system": request.user.system})
    if request.method == "POST" and form.is_valid():
        request.user.system = form.cleaned_data["system"]
        request.user.save(update_fields=["system"])
        messages.success(request, f"Your problems now come in {request.user.get_system_display()} units.")
        return redirect(back or "people:units")
    return render(request, "people/units.html", {"form": form, "next": back})


def _same_site(request: PersonRequest, url: str) -> str:
    allowed = url_has_allowed_host_and_scheme(
        url, allowed_hosts={request.get_host()}, require_https=request.is_secure()
    )
    return url if allowed else ""
