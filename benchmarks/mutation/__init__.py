"""Break the code on purpose and see whether the tests notice."""
