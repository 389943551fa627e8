"""Marks the first block of every check there is: the questions before a family came a second time."""

from django.db import migrations

DECIDING = ("check", "confirmation", "refresher")


def mark(apps, schema_editor):
    attempts = apps.get_model("quizzes", "Attempt").objects.using(schema_editor.connection.alias)
    rows = attempts.filter(sitting__purpose__in=DECIDING).order_by("sitting_id", "number")
    first, sitting, seen = [], None, set()
    for pk, of, family in rows.values_list("pk", "sitting_id", "family").iterator(chunk_size=2000):
        if of != sitting:
            sitting, seen, block = of, set(), True
        block = block and family not in seen
        seen.add(family)
        if block:
            first.append(pk)
    for start in range(0, len(first), 500):
        attempts.filter(pk__in=first[start : start + 500]).update(diagnostic=True)


class Migration(migrations.Migration):
    dependencies = [("quizzes", "0002_supervision_time_and_whole_course")]
    operations = [migrations.RunPython(mark, migrations.RunPython.noop)]
