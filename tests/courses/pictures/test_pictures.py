"""What the chapter gives away."""

import courses.pictures as pictures


def test_the_renderer_has_a_number() -> None:
    assert pictures.RENDERER == 1


def test_all_it_names_is_there() -> None:
    assert all(hasattr(pictures, name) for name in pictures.__all__)
