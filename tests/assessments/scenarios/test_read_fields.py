"""Fields of a scenario file."""

import pytest

from assessments.scenarios.fields import Field
from assessments.scenarios.read_fields import read_fields
from courses.content.errors import FileRefused
from courses.content.tables import read_table


def field_of(text: str) -> Field:
    return read_fields(read_table(f"[[facts]]\n{text}", "a.toml"), "facts")[0]


def test_a_field_takes_what_is_written_and_leaves_the_rest() -> None:
    assert field_of("name = 'rh'\nkind = 'quantity'\nunit = 'rh'\nhidden = true") == Field(
        "rh", "quantity", unit="rh", hidden=True
    )
    assert field_of("name = 'shut'\nkind = 'yes_no'\noptional = true") == Field("shut", "yes_no", optional=True)


def test_a_field_of_rows_has_columns_and_a_list_has_items() -> None:
    rows = field_of("name = 'rows'\nkind = 'rows'\nmost = 3\n[[facts.columns]]\nname = 'shut'\nkind = 'yes_no'")
    assert rows == Field("rows", "rows", columns=(Field("shut", "yes_no"),), most=3)
    items = field_of("name = 'list'\nkind = 'list'\n[[facts.items]]\nname = 'shut'\nkind = 'yes_no'")
    assert items == Field("list", "list", items=Field("shut", "yes_no"))


def test_an_option_is_called_as_the_trade_calls_it() -> None:
    one = field_of("name = 'grade'\nkind = 'choice'\noptions = [{ id = 'P1500', words = 'P1500' }]")
    assert one.option_ids == ("P1500",)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("name = 'Rh'\nkind = 'text'", r"line 2, facts\[1\].name: 'Rh' isn't a name of small letters"),
        ("name = 'rh'\nkind = 'number'", "line 3, .*kind: 'number' isn't known here"),
        ("name = 'rh'\nkind = 'quantity'\nunit = 'degcc'", "unit: 'degcc' isn't known here; did you mean degc"),
        ("name = 'rh'\nkind = 'quantity'", r"facts\[1\].unit: this is missing; write unit = "),
        ("name = 'rh'\nkind = 'text'\nunit = 'rh'", "line 4, .*unit: only a quantity has a unit"),
        ("name = 'r'\nkind = 'rows'", r"the rows of 'r' need at least one '\[\[columns\]\]'"),
        ("name = 'r'\nkind = 'list'", r"the list 'r' needs exactly one '\[\[items\]\]'"),
        ("name = 'r'\nkind = 'choice'", r"the choice 'r' needs '\[\[options\]\]'"),
        (
            "name = 'r'\nkind = 'choice'\noptions = [{ id = 'a', words = 'A' }, { id = 'a', words = 'B' }]",
            r"options\[2\].id: 'a' stands above already; each id is used once",
        ),
        (
            "name = 'r'\nkind = 'choice'\noptions = [{ id = 'a', word = 'A' }]",
            r"options\[1\].word: 'word' isn't known here; did you mean words\?",
        ),
        (
            "name = 'r'\nkind = 'choice'\noptions = [{ id = 'P 1500', words = 'A' }]",
            r"options\[1\].id: 'P 1500' isn't a name of letters, digits and underscores",
        ),
    ],
)
def test_a_field_that_cant_stand_is_refused(text: str, says: str) -> None:
    with pytest.raises(FileRefused, match=says):
        field_of(text)
