package io.github.stoplag.examples.film;

import java.util.List;

/** Something that gives the frames of a film, one at a time, as often as it is asked. */
interface FilmSource {
    /** Gives what is known before the first frame is read. */
    Facts facts();

    /**
     * Hands on the frames in the order of time.
     *
     * @throws io.github.stoplag.examples.file.InputException if the film cannot be read to its end
     */
    void read(FrameTaker taker);

    /** Gives what was met on the way through the film and is to be kept in mind. */
    default List<String> met() {
        return List.of();
    }

    /** Takes frames. */
    interface FrameTaker {
        /** Takes a frame, whose picture is not valid afterwards; says whether more are wanted. */
        boolean take(Frame frame);
    }

    /**
     * A frame.
     *
     * @param number its number, from 0
     * @param stampS the time at which it is to be shown by the film's own word, in seconds; its number if the film has
     *     none
     * @param raster the picture
     */
    record Frame(int number, double stampS, Raster raster) {}

    /**
     * What is known of a film before its frames are read.
     *
     * @param kind what it is and what reads it
     * @param width columns of the upright picture
     * @param height rows of the upright picture
     * @param frames how many frames there are; 0 if that is not known beforehand
     * @param stamped whether the frames have time stamps
     * @param coding what the numbers mean
     * @param caveats what to keep in mind
     */
    record Facts(
            String kind, int width, int height, int frames, boolean stamped, Coding coding, List<String> caveats) {}
}
