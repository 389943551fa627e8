"""What the answers of first blocks say about the questions, and about the people who gave them. Pure.

Everything is computed from counts that a database can sum (``tallies.Tally``), never from single answers,
save the drift alarm, which lives on their order. Only first blocks count, each kind of question once and
always finished: answers of a check that stops when it is decided make questions look easier than they are,
since able people give more of them. Intervals are of 95 %.
"""
