"""The door `log_head`: the newest head, as it can be kept elsewhere."""

import json

from django.conf import settings

from assessments import log
from assessments.competence.log import Head
from courses.keys import public_keys


def test_the_newest_head_is_printed_with_its_signature(school, shell, now):
    log.enter(log.SCHOOL, "noted", {}, now=now)
    log.enter(log.SCHOOL, "noted", {}, now=now)
    run = shell("log_head")
    said = json.loads(run.out)
    assert (run.code, said["size"], said["signed_at"]) == (0, 2, "2026-04-14T14:05:00.000000Z")
    signature = said.pop("signature")
    assert Head(**said).is_signed(signature, public_keys(settings.VAR)[said["key_id"]])


def test_an_empty_log_has_no_head(school, shell):
    run = shell("log_head")
    assert (run.code, run.out, run.err) == (2, "", "The log is empty: there is no head yet.\n")
