"""How passwords are kept: Argon2id at the strength that the usual guidance names as its minimum."""

from django.contrib.auth.hashers import Argon2PasswordHasher


class Argon2(Argon2PasswordHasher):
    """19 MiB, two passes, one lane (OWASP Password Storage Cheat Sheet): a class signs in without a queue."""

    memory_cost = 19 * 1024
    time_cost = 2
    parallelism = 1
