"""The settings of the site, with the bare view of the benches beside its pages."""

from courses.server.settings import *  # noqa: F403

ROOT_URLCONF = "tests.bench.bare"
