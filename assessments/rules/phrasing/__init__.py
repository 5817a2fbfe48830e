"""Tests put together from words: phrases with gaps, and what fits each of them."""
