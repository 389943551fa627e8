"""A real Chromium, driven by Playwright. Without one the tests skip, or fail where REQUIRE_BROWSER is set."""

import os
import shutil

import pytest
from django.conf import settings
from django.test import Client

# Playwright keeps an event loop in the main thread; Django would refuse the database there.
os.environ.setdefault("DJANGO_ALLOW_ASYNC_UNSAFE", "true")

NAMES = ("chromium", "chromium-browser", "google-chrome")
QUIET = (
    "--no-sandbox",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-default-apps",
    "--disable-domain-reliability",
    "--disable-sync",
    "--no-pings",
)


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args):
    path = next(filter(None, map(shutil.which, NAMES)), None)
    if path is None:
        missing = "No Chromium here. To run the browser tests install it (Debian: apt-get install chromium)."
        (pytest.fail if os.environ.get("REQUIRE_BROWSER") else pytest.skip)(missing)
    return {**browser_type_launch_args, "executable_path": path, "args": [*QUIET]}


@pytest.fixture
def visit(browser, new_context, live_server):
    """Opens a browser window, signed in where a person is given.

    When the test ends nothing may have been said in a console and no request have left the site.
    """
    noise, strayed = [], []

    def open_window(person=None, *, width=1280, script=True, scheme="light"):
        window = new_context(
            base_url=live_server.url,
            viewport={"width": width, "height": 900},
            java_script_enabled=script,
            color_scheme=scheme,
        )
        if person is not None:
            window.add_cookies([session(person, live_server.url)])
        page = window.new_page()
        page.set_default_timeout(5_000)
        # That a page itself was refused is no noise; that a part of it was is.
        page.on(
            "console",
            lambda said: said.location["url"] == page.url or noise.append(f"{page.url}: {said.text}"),
        )
        page.on("pageerror", lambda error: noise.append(f"{page.url} {error}"))
        page.on("request", lambda sent: sent.url.startswith(live_server.url) or strayed.append(sent.url))
        return page

    yield open_window
    assert noise == []
    assert strayed == []


def session(person, url):
    client = Client()
    client.force_login(person)
    name = settings.SESSION_COOKIE_NAME
    return {"name": name, "value": client.cookies[name].value, "url": url}
