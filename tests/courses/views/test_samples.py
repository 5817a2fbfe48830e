"""The samples of the sheet leave no code, no kind of task and no state of an answer out."""

from courses.templatetags.words import DECISIONS, OUTCOMES, STANDINGS, VERDICTS
from courses.views.samples import findings, sheet_of_samples, tasks


def test_every_code_stands_on_the_sheet():
    sheet = sheet_of_samples()
    assert (sheet["standings"], sheet["verdicts"], sheet["outcomes"]) == (
        list(STANDINGS),
        list(VERDICTS),
        list(OUTCOMES),
    )
    assert sheet["decisions"] == list(DECISIONS)
    shown = [one["verdict"] for name in ("findings", "met", "not_applicable") for one in sheet[name]]
    assert sorted(shown) == sorted(VERDICTS)


def test_every_kind_of_task_and_every_state_of_an_answer_is_shown():
    shown = tasks()
    assert {task["kind"] for task in shown} == {"quantity", "choice", "many", "yes_no", "text"}
    assert {state for task in shown for state in ("error", "conflict", "late_by", "saved_at") if task.get(state)} == {
        "error",
        "conflict",
        "late_by",
        "saved_at",
    }


def test_one_lesson_is_taught_and_one_is_only_named():
    assert {bool(one["lesson"]["url"]) for one in findings()} == {True, False}
