"""The door `new_key`: a key takes over, and the log says so."""

import json

from assessments import log
from courses.keys import make_keys, signing_key


def test_a_new_key_is_made_and_vouched_for(school, shell, now, settings, tmp_path, django_capture_on_commit_callbacks):
    settings.VAR = tmp_path
    make_keys(tmp_path)
    log.enter(log.SCHOOL, "noted", {}, now=now)
    old = signing_key(tmp_path)[0]
    with django_capture_on_commit_callbacks(execute=True):
        run = shell("new_key")
    said = json.loads(run.out)
    assert (run.code, said["public"]) == (0, f"{tmp_path.name}/keys/{said['key_id']}.pub")
    assert signing_key(tmp_path)[0] == said["key_id"] != old
    assert (tmp_path / "keys" / f"{old}.pub").is_file()
    assert json.loads(shell("verify_log").out)["ok"]


def test_without_an_old_key_nobody_vouches(school, shell, settings, tmp_path):
    settings.VAR = tmp_path
    run = shell("new_key")
    assert (run.code, run.out) == (2, "")
    assert run.err.startswith("There is no signing key in ")
    assert list(tmp_path.iterdir()) == []
