"""What pages hand to the browser stands safely in an attribute."""

from django.template import Context, Template

from courses.templatetags.devices import as_json


def test_json_in_an_attribute_keeps_its_quotes_to_itself():
    page = Template('{% load devices %}<form data-options="{{ options|as_json }}">').render(
        Context({"options": {"a": 'x"><script>'}})
    )
    assert page == '<form data-options="{&quot;a&quot;: &quot;x\\&quot;&gt;&lt;script&gt;&quot;}">'


def test_values_come_back_as_they_were():
    assert as_json({"n": [1, None, True]}) == '{"n": [1, null, true]}'
