"""What can be refused, each with the sentence a person reads."""


class Refused(Exception):
    """A deed that the rules do not allow; ``str()`` is the sentence to show."""
