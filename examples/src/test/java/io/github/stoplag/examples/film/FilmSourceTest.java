package io.github.stoplag.examples.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.stoplag.examples.file.InputException;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FilmSourceTest {
    /** What the quantisation of the coding leaves of an even square. */
    private static final double HALF_A_LEVEL = 0.5;

    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    private record Seen(List<Double> stampsS, List<Double> levels) {}

    private static Seen middle(FilmSource film) {
        Seen seen = new Seen(new ArrayList<>(), new ArrayList<>());
        film.read(frame -> {
            seen.stampsS.add(frame.stampS());
            double sum = 0;
            for (int y = 20; y < 28; y++) {
                for (int x = 20; x < 28; x++) {
                    sum += frame.raster().level(Channel.LUMA, x, y);
                }
            }
            seen.levels.add(sum / 64);
            return true;
        });
        return seen;
    }

    @Test
    void aGreyRampComesBackAsItWasCoded() throws IOException {
        Path file = Films.square(folder.resolve("a ramp.mp4"), 60, 240, n -> 16 + 219 * n / 59.0);
        FilmSource film = FilmFile.open(file, FilmFile.Decoding.JAVA);
        Seen seen = middle(film);
        assertThat(film.facts().coding().full()).isFalse();
        assertThat(film.facts().frames()).isEqualTo(60);
        assertThat(film.facts().width()).isEqualTo(Films.WIDTH);
        for (int n = 0; n < 60; n++) {
            double coded = Math.rint(16 + 219 * n / 59.0);
            assertThat(16 + 219 * seen.levels.get(n)).isCloseTo(coded, within(HALF_A_LEVEL));
            assertThat(seen.stampsS.get(n)).isCloseTo(n / 240.0, within(1e-9));
        }
    }

    @Test
    void timeStampsAreThoseOfTheFilmWhenItsRateVaries() throws IOException {
        double[] stampsS = {0, 0.01, 0.02, 0.05, 0.06, 0.1, 0.11, 0.12, 0.2, 0.21, 0.25};
        Path file = Films.square(folder.resolve("varied.mov"), 10, n -> stampsS[n], n -> 100);
        List<Double> seen = middle(FilmFile.open(file, FilmFile.Decoding.JAVA)).stampsS;
        for (int n = 0; n < 10; n++) {
            assertThat(seen.get(n)).isCloseTo(stampsS[n], within(1e-9));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "libx264, mp4, -bf 3 -pix_fmt yuv420p -qp 4, H.264",
        "libx264, mp4, -bf 3 -pix_fmt yuvj420p -color_range pc -qp 4, H.264",
        "libx264, mov, -x264-params direct=temporal:bframes=3:qp=4 -pix_fmt yuv420p, h264",
        "libx265, mp4, -pix_fmt yuv420p10le -x265-params log-level=error:lossless=1, hevc",
        "mjpeg, avi, -pix_fmt yuvj420p -q:v 1, mjpeg",
    })
    void aRampInOtherCodingsComesBackToo(String codec, String ending, String options, String kind)
            throws IOException, InterruptedException {
        Path first = Files.createDirectory(folder.resolve("pictures"));
        for (int n = 0; n < 30; n++) {
            ImageIO.write(
                    grey(64, 48, 5 + 8 * n),
                    "png",
                    first.resolve("n" + n + ".png").toFile());
        }
        Path file = folder.resolve("coded." + ending);
        List<String> command = new ArrayList<>(
                List.of("-framerate", "120", "-i", first.resolve("n%d.png").toString(), "-c:v", codec));
        command.addAll(Arrays.asList(options.split(" ")));
        command.add(file.toString());
        Films.ffmpeg(command.toArray(new String[0]));
        FilmSource film = FilmFile.open(file, FilmFile.Decoding.AUTO);
        Seen seen = middle(film);
        assertThat(film.facts().kind()).startsWith(kind);
        assertThat(seen.levels).hasSize(30);
        for (int n = 0; n < 30; n++) {
            assertThat(255 * seen.levels.get(n)).as("frame %d", n).isCloseTo(5 + 8 * n, within(1.6));
            assertThat(seen.stampsS.get(n)).isCloseTo(n / 120.0, within(1e-6));
        }
    }

    /** The same numbers by the other decoder, where motion, noise and prediction both ways are in the film. */
    @Test
    void bothDecodersGiveTheSameBits() throws IOException, InterruptedException {
        Path file = folder.resolve("both.mp4");
        Films.ffmpeg(
                "-f",
                "lavfi",
                "-i",
                "testsrc2=size=98x74:rate=60:duration=0.5,fade=t=in:d=0.3,noise=alls=20:allf=t,format=yuv420p",
                "-c:v",
                "libx264",
                "-preset",
                "slow",
                "-x264-params",
                "direct=spatial:bframes=3",
                file.toString());
        List<Long> java = sums(FilmFile.open(file, FilmFile.Decoding.JAVA));
        List<Long> other = sums(FilmFile.open(file, FilmFile.Decoding.FFMPEG));
        assertThat(java).hasSize(30).isEqualTo(other);
    }

    private static List<Long> sums(FilmSource film) {
        List<Long> sums = new ArrayList<>();
        film.read(frame -> {
            CRC32 sum = new CRC32();
            Raster raster = frame.raster();
            for (int i = 0; i < raster.width() * raster.height(); i++) {
                sum.update(raster.shown(i % raster.width(), i / raster.width()) >> 8);
                sum.update((int) Math.round(219 * raster.level(Channel.LUMA, i % raster.width(), i / raster.width())));
            }
            sums.add(sum.getValue() + Math.round(1e6 * frame.stampS()));
            return true;
        });
        return sums;
    }

    private static BufferedImage grey(int width, int height, int level) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
        for (int i = 0; i < width * height; i++) {
            image.setRGB(i % width, i / width, level << 16 | level << 8 | level);
        }
        return image;
    }

    @Test
    void picturesAreTakenInTheOrderOfTheirNumbersAndLeaveGaps() throws IOException {
        ImageIO.write(grey(64, 48, 10), "png", folder.resolve("IMG_9.png").toFile());
        ImageIO.write(grey(64, 48, 30), "png", folder.resolve("IMG_11.png").toFile());
        ImageIO.write(grey(64, 48, 20), "png", folder.resolve("IMG_0010.png").toFile());
        BufferedImage grey = new BufferedImage(64, 48, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < 64 * 48; i++) {
            grey.getRaster().setSample(i % 64, i / 64, 0, 200);
        }
        ImageIO.write(grey, "png", folder.resolve("IMG_14.png").toFile());
        Files.writeString(folder.resolve("notes.txt"), "no picture");
        FilmSource film = FilmFile.open(folder, FilmFile.Decoding.AUTO);
        Seen seen = middle(film);
        assertThat(seen.stampsS).containsExactly(0.0, 1.0, 2.0, 5.0);
        double[] levels = {10, 20, 30, 200};
        for (int n = 0; n < 4; n++) {
            assertThat(255 * seen.levels.get(n)).isCloseTo(levels[n], within(1e-9));
        }
        assertThat(film.facts().caveats())
                .containsExactly(
                        "1 files of the folder are no pictures and were passed over, first notes.txt",
                        "of frames 0 to 5 (counted from the first file) only 4 are in the folder");
    }

    @Test
    void aPictureTooLargeForMemoryIsRefusedBeforeItIsDecoded() throws IOException {
        ByteBuffer png = ByteBuffer.allocate(64);
        png.put(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
        ByteBuffer head = ByteBuffer.allocate(17);
        head.put("IHDR".getBytes(StandardCharsets.US_ASCII))
                .putInt(60_000)
                .putInt(60_000)
                .put(new byte[] {8, 2, 0, 0, 0});
        CRC32 sum = new CRC32();
        sum.update(head.array());
        png.putInt(13).put(head.array()).putInt((int) sum.getValue());
        Path file = folder.resolve("bomb_1.png");
        Files.write(file, Arrays.copyOf(png.array(), png.position()));
        assertRefused(folder, "bomb_1.png: pictures must have at most 67108864 pixels, got 60000 x 60000");
    }

    private void assertRefused(Path path, String message) {
        assertThatThrownBy(() -> FilmFile.open(path, FilmFile.Decoding.JAVA).read(frame -> true))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(message)
                .hasMessageNotContaining("\n");
    }

    @Test
    void whatIsNoFilmIsRefusedInOneLine() throws IOException {
        assertRefused(folder.resolve("nowhere.mp4"), "cannot be read: no such file");
        assertRefused(Files.createFile(folder.resolve("empty.mp4")), "is empty");
        assertRefused(Files.createDirectory(folder.resolve("pictures")), "holds no PNG or JPEG picture");
        Path named = folder.resolve("table.mp4");
        Files.writeString(named, "frame,led\n0,1\n");
        assertRefused(named, "is no film that is known by its first bytes");
        Path zeros = folder.resolve("zeros.mov");
        Files.write(zeros, new byte[5000]);
        assertRefused(zeros, "is no film that is known by its first bytes");
        Path picture = folder.resolve("still.mp4");
        ImageIO.write(grey(8, 8, 9), "png", picture.toFile());
        assertRefused(picture, "is a single picture");
        Path avi = folder.resolve("other.avi");
        Files.writeString(avi, "RIFF....AVI LIST");
        assertRefused(avi, "cannot be decoded in Java: it is no MP4 or MOV film");
    }

    @Test
    void whatIsLeftOfATruncatedFilmIsReadAndTold() throws IOException {
        Path whole = Films.square(folder.resolve("whole.mp4"), 30, 60, n -> 50 + 5 * n);
        byte[] bytes = Files.readAllBytes(whole);
        int index = new String(bytes, StandardCharsets.ISO_8859_1).lastIndexOf("moov") - 4;
        Path noIndex = folder.resolve("cut.mp4");
        Files.write(noIndex, Arrays.copyOf(bytes, index + 20));
        assertRefused(noIndex, "has no index (box \"moov\"): the film was cut off before it was closed");

        // the index first, as a film for the web has it, and the end of the pictures missing
        byte[] front = indexFirst(bytes, index);
        Path cut = folder.resolve("front.mp4");
        Files.write(cut, Arrays.copyOf(front, front.length - (index / 3)));
        FilmSource film = FilmFile.open(cut, FilmFile.Decoding.JAVA);
        assertThat(film.facts().caveats()).hasSize(1);
        assertThat(film.facts().caveats().get(0)).matches("the film is cut off: [0-9]+ of its 30 frames are there");
        assertThat(middle(film).levels).hasSizeBetween(1, 29);
        Path stub = folder.resolve("stub.mp4");
        Files.write(stub, Arrays.copyOf(front, front.length - index + 60));
        assertRefused(stub, "is cut off before its first frame");
    }

    /** Moves the index in front of the pictures and sets the places in it right. */
    private static byte[] indexFirst(byte[] bytes, int index) {
        int length = bytes.length - index;
        ByteBuffer moved = ByteBuffer.allocate(bytes.length);
        int type = ByteBuffer.wrap(bytes).getInt(0);
        moved.put(bytes, 0, type).put(bytes, index, length).put(bytes, type, index - type);
        String text = new String(moved.array(), StandardCharsets.ISO_8859_1);
        int places = text.indexOf("stco") + 8;
        if (places > 8) {
            for (int i = 0; i < moved.getInt(places); i++) {
                int at = places + 4 + 4 * i;
                moved.putInt(at, moved.getInt(at) + length);
            }
        } else {
            places = text.indexOf("co64") + 8;
            for (int i = 0; i < moved.getInt(places); i++) {
                int at = places + 4 + 8 * i;
                moved.putLong(at, moved.getLong(at) + length);
            }
        }
        return moved.array();
    }

    @Test
    void aDamagedFrameIsNamed() throws IOException {
        Path file = Films.square(folder.resolve("damaged.mp4"), 10, 60, n -> 50 + 5 * n);
        try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
            long middle = bytes.length() / 4;
            bytes.seek(middle);
            bytes.write(new byte[300]);
        }
        assertThatThrownBy(() -> FilmFile.open(file, FilmFile.Decoding.JAVA).read(frame -> true))
                .isInstanceOf(InputException.class)
                .hasMessageMatching(".*(frame [0-9]+ cannot be decoded|cannot be decoded in Java).*");
    }

    @Test
    void aFilmOfFourGibibytesIsReadWithoutItsEmptyParts() throws IOException {
        Path file = Films.square(folder.resolve("large.mp4"), 10, 60, n -> 50 + 5 * n);
        try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
            long end = bytes.length();
            long size = 4L << 30;
            bytes.seek(end);
            bytes.writeInt(1);
            bytes.writeBytes("free");
            bytes.writeLong(size);
            bytes.setLength(end + size);
        }
        assertThat(Files.size(file)).isGreaterThan(4L << 30);
        assertThat(middle(FilmFile.open(file, FilmFile.Decoding.JAVA)).levels).hasSize(10);
    }

    @Test
    void anIndexThatPromisesBillionsOfFramesIsRefused() throws IOException {
        Path file = Films.square(folder.resolve("greedy.mp4"), 10, 60, n -> 90);
        byte[] bytes = Files.readAllBytes(file);
        int sizes = new String(bytes, StandardCharsets.ISO_8859_1).lastIndexOf("stsz");
        ByteBuffer.wrap(bytes).putInt(sizes + 12, Integer.MAX_VALUE);
        Files.write(file, bytes);
        assertRefused(file, "is a damaged film: its index is damaged: it cannot hold 2147483647 frames");
    }

    @Test
    void aFilmWithoutAVideoTrackIsRefused() throws IOException {
        Path file = Films.square(folder.resolve("sound.mp4"), 10, 60, n -> 90);
        String text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
        Files.write(file, text.replace("vide", "soun").getBytes(StandardCharsets.ISO_8859_1));
        assertRefused(file, "has no video track");
    }
}
