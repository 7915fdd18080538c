package io.github.stoplag.examples.film;

/** Says why a film needs another decoder. */
final class Undecodable extends Exception {
    private static final long serialVersionUID = 1L;

    Undecodable(String message) {
        super(message);
    }
}
