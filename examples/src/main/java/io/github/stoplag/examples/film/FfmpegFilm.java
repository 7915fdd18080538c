package io.github.stoplag.examples.film;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.stoplag.examples.file.InputException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A film in a coding that only {@code ffmpeg} reads. The numbers are taken as they were coded, frame for frame, without
 * turning, scaling, repeating or leaving out any.
 */
final class FfmpegFilm implements FilmSource {
    private static final long MOST_PIXELS = 64L << 20;
    /** Only files, and only this one's kind of container: a film cannot make it open an address. */
    private static final List<String> SAFE = List.of("-protocol_whitelist", "file,pipe");

    private static final Map<String, Integer> MATRICES =
            Map.of("bt709", 1, "bt470bg", 5, "smpte170m", 6, "smpte240m", 7, "bt2020nc", 9, "bt2020c", 10);
    private static final Map<String, Integer> TRANSFERS = Map.of(
            "bt709",
            1,
            "gamma22",
            4,
            "gamma28",
            5,
            "smpte170m",
            6,
            "linear",
            8,
            "iec61966-2-1",
            13,
            "bt2020-10",
            14,
            "bt2020-12",
            15,
            "smpte2084",
            16,
            "arib-std-b67",
            18);

    private final Path path;
    private final Layout layout;
    private final int quarters;
    private final Facts facts;
    private final List<String> complaints = new ArrayList<>();

    private FfmpegFilm(Path path, Layout layout, int quarters, Facts facts) {
        this.path = path;
        this.layout = layout;
        this.quarters = quarters;
        this.facts = facts;
    }

    /** How the bytes of a frame lie. */
    private record Layout(int width, int height, int xShift, int yShift, int bytes, boolean grey, boolean rgb) {
        /** Reads the name of a planar pixel format; all others are asked for as red, green, blue. */
        static Layout of(String format, int width, int height) {
            if (format.matches("yuvj?4[0-9]{2}p((9|10|12|14|16)le)?")) {
                int xShift = format.contains("444") || format.contains("440") ? 0 : format.contains("41") ? 2 : 1;
                int yShift = format.contains("420") || format.contains("440") ? 1 : format.contains("410") ? 2 : 0;
                return new Layout(width, height, xShift, yShift, format.endsWith("le") ? 2 : 1, false, false);
            } else if (format.matches("gray((9|10|12|14|16)le)?")) {
                return new Layout(width, height, 0, 0, format.endsWith("le") ? 2 : 1, true, false);
            }
            return new Layout(width, height, 0, 0, 1, false, true);
        }

        private int columns() {
            return -(-width >> xShift);
        }

        private int rows() {
            return -(-height >> yShift);
        }

        int frameBytes() {
            int pixels = width * height;
            return rgb ? 3 * pixels : bytes * (pixels + (grey ? 0 : 2 * columns() * rows()));
        }

        Raster raster(byte[] data, Coding coding) {
            if (rgb) {
                return new Raster.Rgb(
                        width,
                        height,
                        coding,
                        Plane.of(data, 0, 3, 3 * width),
                        Plane.of(data, 1, 3, 3 * width),
                        Plane.of(data, 2, 3, 3 * width));
            }
            Plane y = plane(data, 0, width);
            if (grey) {
                return new Raster.Rgb(width, height, coding, y, y, y);
            }
            int start = bytes * width * height;
            return new Raster.Yuv(
                    width,
                    height,
                    coding,
                    y,
                    plane(data, start, columns()),
                    plane(data, start + bytes * columns() * rows(), columns()),
                    xShift,
                    yShift);
        }

        private Plane plane(byte[] data, int from, int columns) {
            return new Plane(data, from, bytes, bytes * columns, bytes == 2, 0);
        }
    }

    /**
     * Asks what a film is.
     *
     * @param why why ffmpeg is needed
     * @throws InputException if ffmpeg is missing or finds no film
     */
    static FfmpegFilm open(Path path, String why, List<String> caveats) {
        JsonNode stream = probe(path, why);
        int width = stream.path("width").asInt();
        int height = stream.path("height").asInt();
        if (!(width > 0 && height > 0 && (long) width * height <= MOST_PIXELS)) {
            throw new InputException(
                    path + ": pictures must have 1 to " + MOST_PIXELS + " pixels, got " + width + " x " + height);
        }
        String format = stream.path("pix_fmt").asText();
        Layout layout = Layout.of(format, width, height);
        int quarters = quarters(stream);
        List<String> notes = new ArrayList<>(caveats);
        if (layout.rgb() && !format.matches("(rgb|bgr|gbrp|rgb0|bgr0|rgba|bgra)[0-9]*")) {
            notes.add("pixel format " + format + " is turned into red, green, blue of 8 bits first");
        }
        return new FfmpegFilm(
                path,
                layout,
                quarters,
                new Facts(
                        stream.path("codec_name").asText() + " film, decoded by ffmpeg",
                        quarters % 2 == 0 ? width : height,
                        quarters % 2 == 0 ? height : width,
                        Math.max(0, stream.path("nb_frames").asInt()),
                        true,
                        coding(stream, format, layout),
                        List.copyOf(notes)));
    }

    /** Says whether ffmpeg and ffprobe can be started. */
    static boolean isThere() {
        for (String program : List.of("ffmpeg", "ffprobe")) {
            try (Decoder decoder = Decoder.start(List.of(program, "-version"))) {
                decoder.output().readAllBytes();
                if (decoder.exitCode() != 0) {
                    return false;
                }
            } catch (IOException e) {
                return false;
            }
        }
        return true;
    }

    private static Coding coding(JsonNode stream, String format, Layout layout) {
        int bits = format.matches(".*p(9|10|12|14|16)le")
                ? Integer.parseInt(format.replaceAll(".*p([0-9]+)le", "$1"))
                : format.matches("gray[0-9]+le") ? Integer.parseInt(format.replaceAll("[^0-9]", "")) : 8;
        if (layout.rgb()) {
            return Coding.rgb(8);
        }
        String range = stream.path("color_range").asText("unknown");
        boolean full = range.equals("pc") || format.startsWith("yuvj");
        return Coding.yuv(
                bits,
                full || (layout.grey() && !range.equals("tv")),
                full || range.equals("tv"),
                MATRICES.getOrDefault(stream.path("color_space").asText(), Coding.UNSAID),
                TRANSFERS.getOrDefault(stream.path("color_transfer").asText(), Coding.UNSAID),
                layout.height());
    }

    private static int quarters(JsonNode stream) {
        for (JsonNode side : stream.path("side_data_list")) {
            if (side.has("rotation")) {
                return Math.floorMod(Math.round(-side.path("rotation").asDouble() / 90), 4);
            }
        }
        return Math.floorMod(Math.round(stream.path("tags").path("rotate").asDouble() / 90), 4);
    }

    private static JsonNode probe(Path path, String why) {
        List<String> command = new ArrayList<>(List.of("ffprobe", "-v", "error"));
        command.addAll(SAFE);
        command.addAll(List.of("-select_streams", "v:0", "-show_streams", "-of", "json", "-i", address(path)));
        try (Decoder probe = Decoder.start(command)) {
            String said = new String(probe.output().readAllBytes(), StandardCharsets.UTF_8);
            JsonNode stream = new ObjectMapper().readTree(said).path("streams").path(0);
            if (probe.timedOut()) {
                throw new InputException(path + ": ffprobe gave no answer within " + Decoder.LIMIT_S + " s");
            } else if (stream.isMissingNode()) {
                throw new InputException(path + ": "
                        + (probe.exitCode() == 0
                                ? "has no video track"
                                : "ffmpeg cannot read it: "
                                        + probe.lastComplaint().orElse("it does not say why")));
            }
            return stream;
        } catch (JsonProcessingException e) {
            throw new InputException(path + ": ffprobe gave an answer that cannot be read", e);
        } catch (IOException e) {
            throw missing(path, why, e);
        }
    }

    private static InputException missing(Path path, String why, IOException e) {
        return new InputException(
                path + ": " + why + ", so ffmpeg and ffprobe must be on the path, and they cannot be started; "
                        + "install ffmpeg, or save the film as H.264 in MP4, or its frames as PNG files in a folder",
                e);
    }

    private static String address(Path path) {
        return "file:" + path.toAbsolutePath().normalize();
    }

    @Override
    public Facts facts() {
        return facts;
    }

    @Override
    public List<String> met() {
        return List.copyOf(complaints);
    }

    @Override
    public void read(FrameTaker taker) {
        complaints.clear();
        try {
            if (!read(taker, List.of("-fps_mode", "passthrough")) && !read(taker, List.of("-vsync", "passthrough"))) {
                throw new InputException(path + ": ffmpeg is too old: it knows neither -fps_mode nor -vsync");
            }
        } catch (IOException e) {
            throw missing(path, "it is a " + facts.kind(), e);
        }
    }

    /** Reads all frames; gives false, before any, if this ffmpeg does not know the options. */
    private boolean read(FrameTaker taker, List<String> everyFrame) throws IOException {
        List<String> command = new ArrayList<>(List.of("ffmpeg", "-hide_banner", "-nostdin", "-nostats"));
        command.addAll(List.of("-loglevel", "level+info"));
        command.addAll(SAFE);
        command.addAll(List.of("-noautorotate", "-i", address(path), "-map", "0:v:0", "-vf", "showinfo"));
        command.addAll(everyFrame);
        if (layout.rgb()) {
            command.addAll(List.of("-pix_fmt", "rgb24"));
        }
        command.addAll(List.of("-f", "rawvideo", "pipe:1"));
        try (Decoder decoder = Decoder.start(command)) {
            InputStream output = decoder.output();
            byte[] data = new byte[layout.frameBytes()];
            int number = 0;
            double firstS = 0;
            int got;
            while ((got = output.readNBytes(data, 0, data.length)) == data.length) {
                decoder.alive();
                OptionalDouble stampS = decoder.stampS();
                if (stampS.isEmpty()) {
                    throw new InputException(path + ": frame " + number + " has no time stamp that ffmpeg knows");
                }
                if (number == 0) {
                    firstS = stampS.getAsDouble();
                }
                Raster raster = Raster.Turned.of(layout.raster(data, facts.coding()), quarters);
                if (!taker.take(new Frame(number++, stampS.getAsDouble() - firstS, raster))) {
                    return true;
                }
            }
            return ended(decoder, number, got);
        }
    }

    private boolean ended(Decoder decoder, int frames, int rest) {
        if (decoder.timedOut()) {
            throw new InputException(
                    path + ": ffmpeg gave nothing for " + Decoder.LIMIT_S + " s after frame " + (frames - 1));
        }
        int exitCode = decoder.exitCode();
        if (frames == 0) {
            String said = decoder.lastComplaint().orElse("it does not say why");
            if (said.contains("Unrecognized option")) {
                return false;
            }
            throw new InputException(path + ": ffmpeg finds no frame in it: " + said);
        }
        if (exitCode != 0 || rest != 0 || decoder.lastComplaint().isPresent()) {
            complaints.add("ffmpeg read " + frames + " frames and complained: "
                    + decoder.lastComplaint().orElse("exit code " + exitCode));
        }
        return true;
    }
}
