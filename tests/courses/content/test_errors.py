from courses.content.errors import FileRefused


def test_an_error_is_one_line_that_names_file_line_and_key():
    error = FileRefused("remote.toml", 7, "module.unit", "no 'INX'; did you mean INS?")
    assert str(error) == "remote.toml, line 7, module.unit: no 'INX'; did you mean INS?"
    assert (error.file, error.line, error.key) == ("remote.toml", 7, "module.unit")
    assert error.sentence == "no 'INX'; did you mean INS?"
