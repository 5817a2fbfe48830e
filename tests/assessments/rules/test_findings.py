from assessments.rules import Judged, Mark


def finding(code, severity="points", verdict="met", points=1.5, of=1.5, failed=None):
    return Judged(code, verdict, severity, points, of, "S", "B", None, "practice", failed=failed)


def test_a_mark_adds_up_what_applies():
    mark = Mark(
        (
            finding("A"),
            finding("B", "critical", "not_met", 0, 5),
            finding("C", "critical", "not_applicable", 0, 0),
            finding("D", failed="Why."),
        ),
        "digest",
        {},
    )
    assert (mark.points, mark.of, mark.critical, mark.failed) == (3, 8, ("B",), ("D",))
    assert mark.outcome == "critical_fail"


def test_points_are_whole_numbers_where_they_are_whole():
    assert [type(finding("A", points=points).as_json()["points"]) for points in (2.0, 1.5)] == [int, float]


def test_the_reason_of_a_failed_rule_is_why_it_failed():
    assert finding("A", failed="Why.").as_json()["because"] == "Why."


def test_thirds_of_points_do_not_pile_up_dust():
    assert Mark(tuple(finding("A", points=0.1, of=0.1) for _ in range(3)), "", {}).points == 0.3
