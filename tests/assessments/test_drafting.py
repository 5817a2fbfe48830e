"""A rule book is written by some, reviewed by somebody else, and then out for good."""

import pytest

from assessments import drafting, journey
from assessments.errors import DraftRefused
from assessments.manuscript import read
from assessments.models import Draft, LogEntry, RuleBook

pytestmark = pytest.mark.django_db
WIDER = "near(answer.margin, key.margin, 0.6)"


@pytest.fixture
def scenario(draft):
    return draft.scenario


def test_a_draft_begins_as_the_book_in_use_and_changes_nothing(draft, scenario):
    found = read(draft)
    assert [line.code for line in found.lines] == [rule.code for rule in scenario.rule_book.book.rules]
    assert (found.version, found.sound, found.changes, found.gone) == (2, True, False, ())
    assert found.checked.book.marks == "COA-01@1"
    assert {line.change for line in found.lines} == {""}


def test_one_draft_is_open_at_a_time(draft, scenario, reviewer, now):
    assert drafting.begin_draft(scenario, reviewer, now=now) == draft


def test_a_changed_rule_is_known_as_changed_beside_what_it_was(draft, author, changed):
    found = read(changed(draft, test=WIDER))
    (line,) = [one for one in found.lines if one.change]
    assert (line.code, line.rule.test, line.was.test) == ("COA-01.2", WIDER, "near(answer.margin, key.margin, 0.5)")
    assert (found.sound, found.changes, list(draft.writers.all())) == (True, True, [author])


def test_what_somebody_else_changed_meanwhile_is_not_written_over(draft, author, reviewer, changed):
    seen = drafting.mark_of(draft.row("COA-01.2"))
    changed(draft, test=WIDER)
    with pytest.raises(DraftRefused, match="Somebody changed this rule after you opened it"):
        drafting.keep_rule(draft, {**draft.row("COA-01.2"), "points": 9}, reviewer, seen=seen)


def test_a_faulty_rule_is_kept_and_bars_the_review(draft, author, now, changed):
    draft = changed(draft, test="near(answer.margn, key.margin, 1.0)")
    (line,) = [one for one in read(draft).lines if one.faults]
    fault = line.faults[0].fault
    assert (line.code, fault.start, fault.end, fault.suggestion) == ("COA-01.2", 12, 17, "margin")
    with pytest.raises(DraftRefused, match="Something is wrong with this draft yet"):
        drafting.send_to_review(draft, author, now=now)


def test_a_draft_that_changes_nothing_is_not_sent(draft, author, now):
    with pytest.raises(DraftRefused, match="Nothing is changed against version 1"):
        drafting.send_to_review(draft, author, now=now)


def test_codes_count_on_and_are_never_used_again(draft, author, reviewer, now):
    assert drafting.next_code(draft) == "COA-01.14"
    new = {**draft.row("COA-01.13"), "code": "COA-01.14", "sentence": "Owner told"}
    draft = drafting.keep_rule(draft, new, author, seen="")
    assert drafting.next_code(draft) == "COA-01.15"
    publish(draft, author, reviewer, now)
    later = drafting.begin_draft(draft.scenario, author, now=now)
    later = drafting.take_out(later, "COA-01.14", author)
    assert drafting.next_code(later) == "COA-01.15"


def publish(draft, author, reviewer, now):
    """Let the exemplars stand as they come, and bring the draft out."""
    for one in read(draft).checked.proof.deviations:
        draft = drafting.keep_as_it_came(draft, one.exemplar, author)
    drafting.send_to_review(draft, author, now=now)
    return drafting.publish_draft(draft, reviewer, now=now)


def test_a_new_rule_that_an_exemplar_breaks_waits_until_somebody_says_that_is_right(draft, author, now):
    new = {**draft.row("COA-01.13"), "code": "COA-01.14", "test": "answer.decision != 'measure_again'"}
    draft = drafting.keep_rule(draft, {**new, "when": "key.decision != 'measure_again'"}, author, seen="")
    found = read(draft)
    names = {one.exemplar for one in found.checked.proof.deviations}
    assert "measures again although fresh and short" in names
    assert not found.sound
    for name in sorted(names):
        draft = drafting.keep_as_it_came(draft, name, author)
    found = read(draft)
    assert (found.sound, found.checked.proof.deviations) == (True, ())
    kept = next(one for one in draft.exemplars if one["name"] == "measures again although fresh and short")
    assert (kept["not_met"], kept["exactly"]) == (["R21", "COA-01.14"], True)


def test_a_rule_nobody_breaks_is_idle_until_an_exemplar_breaks_it(draft, author):
    new = {**draft.row("COA-01.13"), "code": "COA-01.14", "test": "answer.dew_point > -30.0"}
    draft = drafting.keep_rule(draft, new, author, seen="")
    assert read(draft).checked.proof.idle_rules == ("COA-01.14",)
    draft = drafting.keep_exemplar(draft, "reads the dew point off the frost scale", {"dew_point": -38.0}, author)
    found = read(draft)
    assert (found.sound, found.checked.proof.idle_rules) == (True, ())
    (kept,) = draft.exemplars
    assert (kept["put"], kept["not_met"]) == ({"dew_point": -38.0}, ["COA-01.1", "COA-01.14"])
    with pytest.raises(DraftRefused, match="is called .* already"):
        drafting.keep_exemplar(draft, kept["name"], {"dew_point": -38.0}, author)
    assert drafting.drop_exemplar(draft, kept["name"], author).exemplars == []


def test_an_exemplar_may_leave_an_answer_out(draft, author):
    draft = drafting.keep_exemplar(draft, "decides nothing", {"decision": None}, author)
    (kept,) = draft.exemplars
    assert (kept["unanswered"], kept["outcomes"]) == (["decision"], ["cannot_certify", "not_yet_satisfactory"])


def test_a_rule_taken_out_is_named_by_no_exemplar_any_more(draft, author):
    draft = drafting.take_out(draft, "COA-01.12", author)
    found = read(draft)
    assert ([rule.code for rule in found.gone], found.sound) == (["COA-01.12"], True)
    (kept,) = draft.exemplars
    assert (kept["name"], kept["not_met"]) == ("no next step at all", ["COA-01.3", "COA-01.13"])
    with pytest.raises(DraftRefused, match="holds no rule COA-01.12"):
        drafting.take_out(draft, "COA-01.12", author)


def test_whoever_wrote_does_not_publish(draft, author, reviewer, now, changed):
    draft = drafting.send_to_review(changed(draft, test=WIDER), author, now=now)
    with pytest.raises(DraftRefused, match="You wrote in this draft"):
        drafting.publish_draft(draft, author, now=now)
    book = drafting.publish_draft(draft, reviewer, now=now)
    assert (book.version, book.scenario_version, book.written_by, book.reviewed_by) == (2, 1, author, reviewer)
    draft.refresh_from_db()
    assert (draft.state, draft.book, draft.scenario.rule_book) == (Draft.State.PUBLISHED, book, book)
    entry = LogEntry.objects.get(kind="book_published")
    assert all(part in entry.body for part in (str(author.handle), str(reviewer.handle), book.digest))


def test_in_review_nothing_is_written_until_it_is_given_back(draft, author, reviewer, now, changed):
    draft = drafting.send_to_review(changed(draft, test=WIDER), author, now=now)
    with pytest.raises(DraftRefused, match="in review"):
        changed(draft, test="near(answer.margin, key.margin, 2.0)")
    with pytest.raises(DraftRefused, match="Say what has to change"):
        drafting.give_back(draft, reviewer, " ")
    draft = drafting.give_back(draft, reviewer, "One kelvin is a lot on a cold day.")
    assert (draft.state, draft.remark, draft.remark_by) == ("draft", "One kelvin is a lot on a cold day.", reviewer)
    draft = drafting.send_to_review(draft, author, now=now)
    assert (drafting.give_back(draft, author, "").state, draft.remark) == ("draft", "")


def test_a_published_draft_marks_new_attempts_and_what_is_open_goes_on_by_its_own(
    draft, author, reviewer, trainee, other, now, changed
):
    scenario = draft.scenario
    going_on = journey.open_attempt(trainee, scenario, "practice", now=now)
    drafting.send_to_review(changed(draft, test=WIDER), author, now=now)
    book = drafting.publish_draft(Draft.objects.get(), reviewer, now=now)
    scenario.refresh_from_db()
    begun = journey.open_attempt(other, scenario, "practice", now=now)
    assert (going_on.rule_book.version, begun.rule_book) == (1, book)
    assert journey.hand_in(going_on, now=now).digest == going_on.rule_book.digest


def test_a_draft_from_a_version_that_no_longer_marks_is_refused(draft, author, second_book, scenario, now, changed):
    from assessments.authoring import put_in_use

    draft = changed(draft, test=WIDER)
    put_in_use(second_book, author, now=now)
    with pytest.raises(DraftRefused, match="Version 2 marks now, and this draft began from another"):
        drafting.send_to_review(draft, author, now=now)


def test_a_draft_is_thrown_away_once_and_another_can_begin(draft, author, scenario, now, changed):
    assert drafting.throw_away(draft).state == Draft.State.DISCARDED
    with pytest.raises(DraftRefused, match="closed already"):
        drafting.throw_away(draft)
    with pytest.raises(DraftRefused, match="This draft is closed"):
        changed(draft, test=WIDER)
    with pytest.raises(DraftRefused, match="not in review"):
        drafting.publish_draft(draft, author, now=now)
    assert drafting.begin_draft(scenario, author, now=now) != draft
    assert RuleBook.objects.filter(code="COA-01").count() == 1


def test_the_last_rule_stays(draft, author):
    draft.rows, draft.exemplars = draft.rows[:1], []
    draft.save()
    with pytest.raises(DraftRefused, match="holds at least one rule"):
        drafting.take_out(draft, "COA-01.1", author)


def test_a_name_no_exemplar_has_is_refused(draft, author):
    with pytest.raises(DraftRefused, match="No exemplar is called “walks away”"):
        drafting.keep_as_it_came(draft, "walks away", author)
    with pytest.raises(DraftRefused, match="Give the exemplar a name"):
        drafting.keep_exemplar(draft, " ", {}, author)


def test_no_exemplar_is_tried_on_faulty_rules(draft, author, changed):
    draft = changed(draft, test="answer.margin")
    with pytest.raises(DraftRefused, match="Mend the rules first"):
        drafting.keep_as_it_came(draft, "refuses a good day", author)
