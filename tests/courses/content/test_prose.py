import pytest

from courses.content.prose import Prose, Quantity, render_text, shown_for
from courses.trade.units import Preferences

US, METRIC = shown_for(Preferences.us()), shown_for(Preferences.metric())


def test_each_quantity_is_written_by_the_reader_s_own_hand():
    prose = Prose(("<p>At least ", Quantity(3.0, "K", 1), " over ", Quantity(12.0, "degc", 0), ".</p>"))
    assert render_text(prose, US) == "<p>At least 5.4\u00a0°F over 53.6\u00a0°F.</p>"
    assert render_text(prose, METRIC) == "<p>At least 3.0\u00a0K over 12\u00a0°C.</p>"
    assert prose.quantities == (Quantity(3.0, "K", 1), Quantity(12.0, "degc", 0))


def test_what_show_returns_is_escaped():
    prose = Prose((Quantity(1.0, "K", 0),))
    assert render_text(prose, lambda value, unit, decimals: f"<b>{value}</b>") == "&lt;b&gt;1.0&lt;/b&gt;"


@pytest.mark.parametrize(
    ("value", "unit", "decimals", "us", "metric"),
    [
        (20.0, "degc", 0, "68\u00a0°F", "20\u00a0°C"),
        (16.0, "degc", 0, "60.8\u00a0°F", "16\u00a0°C"),
        (11.32, "degc", 2, "52.4\u00a0°F", "11.3\u00a0°C"),
        (4.0, "K", 0, "7.2\u00a0°F", "4\u00a0K"),
        (13.0, "degc", 1, "55.4\u00a0°F", "13.0\u00a0°C"),
        (4.0, "um", 1, "0.16\u00a0mil", "4.0\u00a0µm"),
        (110.0, "um", 0, "4.33\u00a0mil", "110\u00a0µm"),
        (380.0, "um", 0, "15\u00a0mil", "380\u00a0µm"),
        (-30.0, "degc", 0, "\u221222\u00a0°F", "\u221230\u00a0°C"),
    ],
)
def test_one_decimal_at_most_but_of_few_mils_and_whole_numbers_stay_whole(value, unit, decimals, us, metric):
    assert (US(value, unit, decimals), METRIC(value, unit, decimals)) == (us, metric)
