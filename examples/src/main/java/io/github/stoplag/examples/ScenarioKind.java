package io.github.stoplag.examples;

import java.util.List;

/**
 * What one program's scenario files look like.
 *
 * @param shipped the name of the file that comes with the program
 * @param keys every key that a file may have
 */
record ScenarioKind(String shipped, List<String> keys) {
    String shippedText() {
        return Resource.text(shipped);
    }
}
