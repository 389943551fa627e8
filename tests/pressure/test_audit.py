"""An audit that could not fail would prove nothing."""

from dataclasses import replace

from pressure import catalogue
from pressure.audit import audit
from pressure.draw import walk

FAMILY = catalogue.family("depth-to-gauge")


def test_a_family_whose_slips_move_onto_the_answer_is_found_out():
    posing = {"near": False}

    def pose(system, facts):
        posed = FAMILY.pose(system, facts)
        near = ("near", "near", "Mend.", posed.accepted)
        return replace(posed, missteps=(near,)) if posing["near"] else posed

    turncoat = replace(FAMILY, pose=pose)
    walk(turncoat, "us")
    assert audit(turncoat, "us", 3).faults == ()
    posing["near"] = True
    assert "The slip 'near' cannot be told from the answer." in "\n".join(audit(turncoat, "us", 3).faults)


def test_an_audit_says_how_many_there_are_and_how_far_the_answers_reach():
    found = audit(FAMILY, "metric", 50)
    assert found.distinct == len(walk(FAMILY, "metric"))
    assert 0 < found.lowest < found.highest
    assert (found.unit, found.faults) == ("bar", ())
    assert 0 < found.median_us <= found.slowest_us
