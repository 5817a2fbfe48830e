from assessments.rules import Rule, RuleBook, Step

RULE = Rule("COA-01.1", "S", "points", 2, "B", "practice", test="answer.ok", places={"test": ("b.toml", 3)})


def test_a_digest_is_that_of_what_the_book_says():
    book = RuleBook("COA-01", 1, (RULE,), "a.toml")
    assert book.digest == RuleBook("COA-01", 1, (RULE,), "b.toml").digest
    assert len(book.digest) == 64


def test_every_word_of_a_book_changes_its_digest():
    said = {
        RuleBook("COA-01", 1, (RULE,)).digest,
        RuleBook("COA-02", 1, (RULE,)).digest,
        RuleBook("COA-01", 2, (RULE,)).digest,
        RuleBook("COA-01", 1, ()).digest,
    }
    changes = [
        Rule("COA-01.2", "S", "points", 2, "B", "practice", test="answer.ok"),
        Rule("COA-01.1", "T", "points", 2, "B", "practice", test="answer.ok"),
        Rule("COA-01.1", "S", "needed", 2, "B", "practice", test="answer.ok"),
        Rule("COA-01.1", "S", "points", 3, "B", "practice", test="answer.ok"),
        Rule("COA-01.1", "S", "points", 2, "C", "practice", test="answer.ok"),
        Rule("COA-01.1", "S", "points", 2, "B", "model", test="answer.ok"),
        Rule("COA-01.1", "S", "points", 2, "B", "practice", "L24", test="answer.ok"),
        Rule("COA-01.1", "S", "points", 2, "B", "practice", test="answer.sure"),
        Rule("COA-01.1", "S", "points", 2, "B", "practice", test="answer.ok", when="key.short"),
        Rule("COA-01.1", "S", "points", 2, "B", "practice", steps=(Step("answer.ok", 2),)),
        Rule("COA-01.1", "S", "points", 2, "B", "practice", share="answer.ok"),
    ]
    said |= {RuleBook("COA-01", 1, (rule,)).digest for rule in changes}
    assert len(said) == 4 + len(changes)


def test_the_digest_of_a_published_book_never_moves():
    assert RuleBook("COA-01", 1, (RULE,)).digest == DIGEST


DIGEST = "7166a3f9bb5bcee542b7b5fbc857c0a529a9f3f0f7402725cb1a64cdaf12adf5"
