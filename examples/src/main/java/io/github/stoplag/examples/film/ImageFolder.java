package io.github.stoplag.examples.film;

import io.github.stoplag.examples.file.InputException;
import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;

/**
 * The frames of a film as PNG or JPEG files in a folder. The last number in a file's name is the number of the frame,
 * so that a frame that is missing leaves its gap; where names hold no numbers, their order counts.
 */
final class ImageFolder implements FilmSource {
    private static final long MOST_PIXELS = 64L << 20;
    private static final Pattern LAST_NUMBER = Pattern.compile("([0-9]+)[^0-9]*$");
    private static final int SRGB = 13;

    private final List<Image> images;
    private final Facts facts;

    private record Image(Path path, int number) {}

    private ImageFolder(List<Image> images, Facts facts) {
        this.images = images;
        this.facts = facts;
    }

    /**
     * Opens a folder.
     *
     * @throws InputException if it holds no pictures, or their numbers do not make an order
     */
    static ImageFolder open(Path folder) {
        List<Path> pictures = new ArrayList<>();
        List<String> others = new ArrayList<>();
        try (Stream<Path> entries = Files.list(folder)) {
            for (Path entry : entries.filter(Files::isRegularFile).sorted().toList()) {
                if (isPicture(entry)) {
                    pictures.add(entry);
                } else {
                    others.add(String.valueOf(entry.getFileName()));
                }
            }
        } catch (IOException | UncheckedIOException e) {
            throw new InputException(folder + ": cannot be read: " + e.getMessage(), e);
        }
        if (pictures.isEmpty()) {
            throw new InputException(folder + ": holds no PNG or JPEG picture");
        }
        List<String> caveats = new ArrayList<>();
        if (!others.isEmpty()) {
            caveats.add(others.size() + " files of the folder are no pictures and were passed over, first "
                    + others.get(0));
        }
        List<Image> images = numbered(folder, pictures);
        int span = images.get(images.size() - 1).number() + 1;
        if (span > images.size()) {
            caveats.add("of frames 0 to " + (span - 1) + " (counted from the first file) only " + images.size()
                    + " are in the folder");
        }
        BufferedImage first = decode(images.get(0).path());
        return new ImageFolder(
                images,
                new Facts(
                        "folder of " + images.size() + " pictures",
                        first.getWidth(),
                        first.getHeight(),
                        images.size(),
                        false,
                        coding(images.get(0).path(), first),
                        List.copyOf(caveats)));
    }

    private static boolean isPicture(Path file) {
        Magic magic = Magic.of(file);
        return magic == Magic.PNG || magic == Magic.JPEG;
    }

    private static List<Image> numbered(Path folder, List<Path> pictures) {
        List<BigInteger> numbers = new ArrayList<>();
        for (Path picture : pictures) {
            String name = String.valueOf(picture.getFileName()).replaceFirst("\\.[^.]*$", "");
            Matcher number = LAST_NUMBER.matcher(name);
            if (!number.find()) {
                return Stream.iterate(0, i -> i < pictures.size(), i -> i + 1)
                        .map(i -> new Image(pictures.get(i), i))
                        .toList();
            }
            numbers.add(new BigInteger(number.group(1)));
        }
        BigInteger least = numbers.stream().min(Comparator.naturalOrder()).orElseThrow();
        List<Image> images = new ArrayList<>();
        for (int i = 0; i < pictures.size(); i++) {
            BigInteger number = numbers.get(i).subtract(least);
            if (number.bitLength() > 30) {
                throw new InputException(
                        folder + ": the number in " + pictures.get(i).getFileName() + " is no frame number: it lies "
                                + number + " above the least");
            }
            images.add(new Image(pictures.get(i), number.intValue()));
        }
        images.sort(Comparator.comparingInt(Image::number));
        for (int i = 1; i < images.size(); i++) {
            if (images.get(i).number() == images.get(i - 1).number()) {
                throw new InputException(folder + ": two pictures have the same number: "
                        + images.get(i - 1).path().getFileName() + " and "
                        + images.get(i).path().getFileName());
            }
        }
        return images;
    }

    /** Decodes a picture after its size has been looked at: a small file can hold a picture that no memory holds. */
    private static BufferedImage decode(Path path) {
        try (FileImageInputStream input = new FileImageInputStream(path.toFile())) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(input);
            if (!readers.hasNext()) {
                throw new InputException(path + ": is no picture that can be read");
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(input, true, true);
                long pixels = (long) reader.getWidth(0) * reader.getHeight(0);
                if (!(pixels > 0 && pixels <= MOST_PIXELS)) {
                    throw new InputException(path + ": pictures must have at most " + MOST_PIXELS + " pixels, got "
                            + reader.getWidth(0) + " x " + reader.getHeight(0));
                }
                return reader.read(0);
            } finally {
                reader.dispose();
            }
        } catch (IOException | IllegalArgumentException | IndexOutOfBoundsException e) {
            throw new InputException(path + ": the picture is damaged or of an unknown kind: " + e.getMessage(), e);
        }
    }

    private static Coding coding(Path path, BufferedImage image) {
        int bits = image.getColorModel() instanceof IndexColorModel
                ? 8
                : image.getSampleModel().getSampleSize(0);
        return Magic.of(path) == Magic.JPEG
                ? new Coding(bits, true, true, 0.299, 0.114, SRGB)
                : new Coding(bits, true, true, 0.2126, 0.0722, SRGB);
    }

    @Override
    public Facts facts() {
        return facts;
    }

    @Override
    public void read(FrameTaker taker) {
        for (Image image : images) {
            BufferedImage picture = decode(image.path());
            if (picture.getWidth() != facts.width() || picture.getHeight() != facts.height()) {
                throw new InputException(image.path() + ": must have " + facts.width() + " x " + facts.height()
                        + " pixels like the first, got " + picture.getWidth() + " x " + picture.getHeight());
            }
            if (!taker.take(new Frame(image.number(), image.number(), raster(image.path(), picture)))) {
                return;
            }
        }
    }

    private Raster raster(Path path, BufferedImage image) {
        Coding coding = coding(path, image);
        int width = image.getWidth();
        int height = image.getHeight();
        if (image.getColorModel() instanceof IndexColorModel) {
            int[] packed = image.getRGB(0, 0, width, height, null, 0, width);
            byte[] bytes = new byte[3 * packed.length];
            for (int i = 0; i < packed.length; i++) {
                bytes[3 * i] = (byte) (packed[i] >> 16);
                bytes[3 * i + 1] = (byte) (packed[i] >> 8);
                bytes[3 * i + 2] = (byte) packed[i];
            }
            return new Raster.Rgb(
                    width,
                    height,
                    coding,
                    Plane.of(bytes, 0, 3, 3 * width),
                    Plane.of(bytes, 1, 3, 3 * width),
                    Plane.of(bytes, 2, 3, 3 * width));
        }
        WritableRaster samples = image.getRaster();
        Plane first = plane(samples, 0, coding.bits());
        return samples.getNumBands() < 3
                ? new Raster.Rgb(width, height, coding, first, first, first)
                : new Raster.Rgb(
                        width,
                        height,
                        coding,
                        first,
                        plane(samples, 1, coding.bits()),
                        plane(samples, 2, coding.bits()));
    }

    private static Plane plane(WritableRaster samples, int band, int bits) {
        int width = samples.getWidth();
        int bytes = bits > 8 ? 2 : 1;
        byte[] data = new byte[bytes * width * samples.getHeight()];
        int[] row = new int[width];
        for (int y = 0; y < samples.getHeight(); y++) {
            samples.getSamples(0, y, width, 1, band, row);
            for (int x = 0; x < width; x++) {
                int at = bytes * (y * width + x);
                data[at] = (byte) row[x];
                if (bytes == 2) {
                    data[at + 1] = (byte) (row[x] >> 8);
                }
            }
        }
        return new Plane(data, 0, bytes, bytes * width, bytes == 2, 0);
    }
}
