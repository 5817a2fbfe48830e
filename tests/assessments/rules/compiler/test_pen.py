from assessments.rules.compiler.pen import Pen, Value


def new():
    return Pen({}, False, None)


def test_a_value_is_named_once_within_a_block():
    pen = new()
    one = pen.named(Value("p1['a']"))
    assert pen.named(Value("p1['a']")) == one
    assert pen.named(Value("p1", atom=True)).text == "p1"
    assert pen.lines == [f"    {one.text} = p1['a']"]


def test_what_was_worked_out_in_a_block_is_not_relied_upon_after_it():
    pen = new()
    pen.enter("if p1:")
    inside = pen.named(Value("abs(p2)"))
    pen.leave()
    assert pen.named(Value("abs(p2)")).text != inside.text


def test_an_empty_block_passes():
    pen = new()
    pen.enter("if p1:")
    pen.leave()
    assert pen.lines == ["    if p1:", "        pass"]


def test_what_was_struck_out_was_never_written():
    pen = new()
    start = pen.place()
    assert pen.quiet(start)
    pen.enter("for x1 in p1:")
    pen.named(Value("x1['a']"))
    assert not pen.quiet(start)
    pen.back(start)
    assert (pen.lines, pen.blocks, pen.recall("x1['a']")) == ([], [], None)


def test_only_numbers_read_at_the_head_are_rounded_there():
    pen = new()
    pen.heads["p1"] = Value("p1", atom=True)
    assert pen.round_ahead(Value("p1")) == "r1"
    assert pen.round_ahead(Value("v2")) is None
