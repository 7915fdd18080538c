package io.github.stoplag.examples.film;

/** The picture of a frame, upright as a player shows it, with the numbers the film holds. */
interface Raster {
    /** Gives the width in pixels. */
    int width();

    /** Gives the height in pixels. */
    int height();

    /**
     * Gives what of a pixel is taken for brightness, 0 for black and 1 for white; a film in limited range may go beyond
     * both.
     */
    double level(Channel channel, int x, int y);

    /**
     * Gives the row in which the camera read a pixel, which is its column where the film was stored lying on its side.
     */
    int rowReadOut(int x, int y);

    /** Gives a pixel for showing, as 0xRRGGBB. */
    default int shown(int x, int y) {
        return eightBit(level(Channel.RED, x, y)) << 16
                | eightBit(level(Channel.GREEN, x, y)) << 8
                | eightBit(level(Channel.BLUE, x, y));
    }

    private static int eightBit(double level) {
        return (int) Math.round(255 * Math.max(0, Math.min(1, level)));
    }

    /** A picture of brightness and two colour differences, which may have fewer columns and rows. */
    record Yuv(int width, int height, Coding coding, Plane y, Plane cb, Plane cr, int xShift, int yShift)
            implements Raster {
        @Override
        public double level(Channel channel, int px, int py) {
            double luma = coding.relative(y.at(px, py));
            if (channel == Channel.LUMA) {
                return luma;
            }
            double blue = 2 * (1 - coding.kb()) * coding.difference(cb.at(px >> xShift, py >> yShift));
            double red = 2 * (1 - coding.kr()) * coding.difference(cr.at(px >> xShift, py >> yShift));
            return switch (channel) {
                case RED -> luma + red;
                case BLUE -> luma + blue;
                default -> luma - (coding.kr() * red + coding.kb() * blue) / (1 - coding.kr() - coding.kb());
            };
        }

        @Override
        public int rowReadOut(int px, int py) {
            return py;
        }
    }

    /** A picture of red, green and blue; a grey one gives the same plane three times. */
    record Rgb(int width, int height, Coding coding, Plane red, Plane green, Plane blue) implements Raster {
        @Override
        public double level(Channel channel, int x, int y) {
            return switch (channel) {
                case RED -> coding.relative(red.at(x, y));
                case GREEN -> coding.relative(green.at(x, y));
                case BLUE -> coding.relative(blue.at(x, y));
                case LUMA ->
                    coding.relative(coding.kr() * red.at(x, y)
                            + (1 - coding.kr() - coding.kb()) * green.at(x, y)
                            + coding.kb() * blue.at(x, y));
            };
        }

        @Override
        public int rowReadOut(int x, int y) {
            return y;
        }
    }

    /** A picture that was stored lying on its side or head, turned clockwise by quarters. */
    record Turned(Raster stored, int quarters) implements Raster {
        static Raster of(Raster stored, int quarters) {
            return quarters == 0 ? stored : new Turned(stored, quarters);
        }

        @Override
        public int width() {
            return quarters % 2 == 0 ? stored.width() : stored.height();
        }

        @Override
        public int height() {
            return quarters % 2 == 0 ? stored.height() : stored.width();
        }

        @Override
        public double level(Channel channel, int x, int y) {
            return stored.level(channel, storedX(x, y), storedY(x, y));
        }

        @Override
        public int rowReadOut(int x, int y) {
            return stored.rowReadOut(storedX(x, y), storedY(x, y));
        }

        private int storedX(int x, int y) {
            return switch (quarters) {
                case 1 -> y;
                case 2 -> stored.width() - 1 - x;
                default -> stored.width() - 1 - y;
            };
        }

        private int storedY(int x, int y) {
            return switch (quarters) {
                case 1 -> stored.height() - 1 - x;
                case 2 -> stored.height() - 1 - y;
                default -> x;
            };
        }
    }
}
