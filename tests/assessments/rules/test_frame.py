import math

from assessments.rules.frame import LARGEST


def test_numbers_within_bounds_can_be_added_over_the_longest_list_without_running_into_infinity():
    longest = 100_000
    assert math.isfinite(LARGEST * longest)
    assert not -LARGEST <= math.inf <= LARGEST
    assert not -LARGEST <= math.nan <= LARGEST
    assert not -LARGEST <= 10**301 <= LARGEST
