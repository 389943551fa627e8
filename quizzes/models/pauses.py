"""Which items are not asked for the time being: entries that are written once, the latest in force."""

from __future__ import annotations

from django.db import connection, models

from quizzes.models.appendonly import AppendOnly


class ItemPause(AppendOnly):
    """A family, or one question as ``family/question``, was paused or taken up again, by whom and why."""

    item = models.CharField(max_length=130)
    paused = models.BooleanField()
    at = models.DateTimeField()
    by_key = models.BigIntegerField(null=True, blank=True)
    by_name = models.CharField(max_length=160)
    why = models.CharField(max_length=400)

    class Meta:
        ordering = ["-pk"]
        indexes = [models.Index(fields=["item", "-id"], name="latest_pause")]

    def __str__(self) -> str:
        return f"{self.item} {'paused' if self.paused else 'taken up again'}"


def paused_items() -> frozenset[str]:
    """Every item that is paused now, in one query. It is asked with every answer, so past the ORM."""
    with connection.cursor() as cursor:
        cursor.execute("SELECT item, paused FROM quizzes_itempause ORDER BY id")
        latest = dict(cursor.fetchall())
    return frozenset([item for item, is_paused in latest.items() if is_paused])
