package io.github.stoplag.json;

/** Why a type has no form in JSON. */
final class NoForm extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    NoForm(String message) {
        super(message);
    }
}
