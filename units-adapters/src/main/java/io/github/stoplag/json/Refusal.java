package io.github.stoplag.json;

/** Why a JSON text is not what it should be: one line that begins with the place. */
final class Refusal extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    Refusal(String message) {
        super(message);
    }

    Refusal(String message, Throwable cause) {
        super(message, cause);
    }

    @Override
    public String getMessage() {
        return String.valueOf(super.getMessage());
    }
}
