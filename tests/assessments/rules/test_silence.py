from assessments.rules.silence import lacks, silenced, unanswered

CASE = {"answer": {"te": 3.0, "plan": None, "rows": [{"n": 1, "ok": None}]}, "model": {"film_um": 4.0, "zones": []}}


def test_a_path_lacks_what_is_missing_anywhere_along_it():
    assert not lacks(CASE, ("answer", "te"))
    assert lacks(CASE, ("answer", "plan", "deep"))
    assert lacks(CASE, ("answer", "rows", "[]", "ok"))
    assert not lacks(CASE, ("answer", "rows", "[]", "n"))
    assert not lacks(CASE, ("model", "zones", "[]", "n"))


def test_answers_behind_a_model_count_as_read():
    rests = {("model",): (("answer", "plan"),), ("model", "zones"): (("answer", "te"),)}
    assert unanswered([("model", "film_um")], CASE, rests) == [("answer", "plan")]
    assert unanswered([("model", "zones")], CASE, rests) == []
    assert unanswered([("key", "te"), ("answer", "te")], CASE, rests) == []


def test_what_rests_on_silence_is_silenced_and_nothing_else():
    rests = {("model", "film_um"): (("answer", "plan"),), ("model", "zones"): (("answer", "te"),)}
    assert silenced(CASE, rests)["model"] == {"film_um": None, "zones": []}
    assert CASE["model"]["film_um"] == 4.0
    assert silenced({**CASE, "model": None}, rests)["model"] is None
