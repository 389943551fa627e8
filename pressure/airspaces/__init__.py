"""Air spaces of body and gear: what closes them, which way the difference runs, what gives, who is hurt.

``spaces`` names the spaces and their walls, ``circumstances`` what opens or closes them, ``trips`` the ways
down and up, ``injuries`` what a difference does; ``model`` brings them together. ``measures`` are what would
have prevented it, ``chains`` the events in order, ``board`` the steps of a solution, ``telling`` the words of
a prompt. The model knows one rule: a difference arises only where a space is closed.
"""
