package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where in the picture a lamp is.
 *
 * @param name the lamp's name
 * @param x the first column
 * @param y the first row
 * @param width columns
 * @param height rows
 */
record LampRegion(String name, int x, int y, int width, int height) {
    private static final Pattern FORM = Pattern.compile(
            "([^=]*)=\\s*([0-9]{1,6})\\s*,\\s*([0-9]{1,6})\\s*,\\s*([0-9]{1,6})\\s*,\\s*([0-9]{1,6})\\s*");
    private static final Pattern NAME = Pattern.compile("[A-Za-z][A-Za-z0-9_.-]{0,39}");

    /**
     * Reads {@code name=x,y,width,height}.
     *
     * @throws InputException if the text is anything else
     */
    static LampRegion parse(String text) {
        Matcher form = FORM.matcher(text);
        if (!form.matches()) {
            throw new InputException(
                    "--lamp must be name=x,y,width,height in whole pixels, such as led=120,80,40,30, got \"" + text
                            + "\"");
        }
        return new LampRegion(
                named(form.group(1)),
                Integer.parseInt(form.group(2)),
                Integer.parseInt(form.group(3)),
                Integer.parseInt(form.group(4)),
                Integer.parseInt(form.group(5)));
    }

    /**
     * Checks the name of a lamp.
     *
     * @throws InputException if it cannot be one
     */
    static String named(String text) {
        String name = text.strip();
        if (!NAME.matcher(name).matches()) {
            throw new InputException(
                    "name of a lamp must be up to 40 letters, digits, \"_\", \".\" or \"-\" and begin with"
                            + " a letter, got \"" + name + "\"");
        }
        return name;
    }

    /**
     * Checks that it lies inside the picture.
     *
     * @throws InputException if it does not
     */
    LampRegion within(FilmSource.Facts facts) {
        if (!(width >= 1 && height >= 1 && x + width <= facts.width() && y + height <= facts.height())) {
            throw new InputException("region of lamp " + name + " must lie inside the picture of " + facts.width()
                    + " x " + facts.height() + " pixels and not be empty, got " + this);
        }
        return this;
    }

    /** Says which regions share pixels, and so light. */
    static List<String> overlaps(List<LampRegion> regions) {
        List<String> told = new ArrayList<>();
        for (int i = 0; i < regions.size(); i++) {
            for (LampRegion other : regions.subList(i + 1, regions.size())) {
                LampRegion one = regions.get(i);
                if (one.x < other.x + other.width
                        && other.x < one.x + one.width
                        && one.y < other.y + other.height
                        && other.y < one.y + one.height) {
                    told.add("the regions of lamps " + one.name + " and " + other.name
                            + " overlap: each counts light of the other");
                }
            }
        }
        return told;
    }

    /** Gives it in the form in which it is read. */
    String text() {
        return name + "=" + x + "," + y + "," + width + "," + height;
    }

    int pixels() {
        return width * height;
    }

    @Override
    public String toString() {
        return "x " + x + " to " + (x + width - 1) + ", y " + y + " to " + (y + height - 1);
    }
}
