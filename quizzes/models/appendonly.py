"""Rows that are written once: nothing on this class, nor on its query sets, can change or remove one."""

from __future__ import annotations

from typing import Any, NoReturn, TypeVar

from django.db import models

Row = TypeVar("Row", bound=models.Model)


class WrittenOnce(Exception):
    """Somebody tried to change a row that is kept as it was written."""


def _refuse() -> NoReturn:
    raise WrittenOnce("This record is append-only: write a new entry instead.")


class AppendOnlyQuerySet(models.QuerySet[Row]):
    """Closes the bulk doors that a guard on ``save`` alone would leave open."""

    def update(self, **kwargs: Any) -> NoReturn:
        _refuse()

    def delete(self) -> NoReturn:
        _refuse()

    def bulk_update(self, *args: Any, **kwargs: Any) -> NoReturn:
        _refuse()

    def update_or_create(self, *args: Any, **kwargs: Any) -> NoReturn:
        _refuse()


class AppendOnly(models.Model):
    """Base of the journal and of decisions."""

    objects = AppendOnlyQuerySet.as_manager()

    class Meta:
        abstract = True

    def save(self, *args: Any, **kwargs: Any) -> None:
        if not self._state.adding:
            _refuse()
        super().save(*args, **kwargs)

    def delete(self, *args: Any, **kwargs: Any) -> NoReturn:
        _refuse()
