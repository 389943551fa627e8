"""Reading a cohort's board from its markup: words, rows, names, heads."""

import re
from html import unescape

from django.urls import reverse


def board(client, cohort, **query):
    return client.get(reverse("desks:board", args=[cohort.pk]), query)


def text_of(markup):
    """The words between the tags, as they would be read aloud."""
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", markup)).split())


def rows_of(response):
    return [text_of(row) for row in re.findall(r"<tr>.*?</tr>", response.text, re.DOTALL)]


def names(response):
    """Whose rows are shown, in order."""
    body = response.text.partition("<tbody>")[2].partition("</tbody>")[0]
    return [text_of(name) for name in re.findall(r'<th scope="row">(.*?)</th>', body)]


def head_of(response):
    return response.text.split("<thead>")[1].split("</thead>")[0]
