"""How far each group's draws have come, so that nobody in it meets numbers that another has had."""

from __future__ import annotations

from django.db import models


class Deal(models.Model):
    """The next seed of one family for one group of learners (``learner.deal_group``).

    Successive seeds visit every problem of a family before any comes again (pressure/draw.py), so a
    counter is all that dealing without repetition needs.
    """

    group = models.CharField(max_length=40)
    family = models.SlugField(max_length=60)
    system = models.CharField(max_length=8)
    next_seed = models.BigIntegerField()

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(fields=["group", "family", "system"], name="one_deal_each"),
        ]

    def __str__(self) -> str:
        return f"{self.family} ({self.system}) for {self.group}"
