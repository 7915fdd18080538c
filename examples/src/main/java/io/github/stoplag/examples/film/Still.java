package io.github.stoplag.examples.film;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * A piece of a frame of the film.
 *
 * @param frame the frame's number
 * @param area the piece
 * @param image the picture, not larger than it is shown
 */
record Still(int frame, LampRegion area, BufferedImage image) {
    private static final int WIDEST = 600;

    static Still of(int frame, Raster raster, LampRegion area) {
        BufferedImage image = new BufferedImage(area.width(), area.height(), BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < area.height(); y++) {
            for (int x = 0; x < area.width(); x++) {
                image.setRGB(x, y, raster.shown(area.x() + x, area.y() + y));
            }
        }
        return new Still(frame, area, smaller(image));
    }

    private static BufferedImage smaller(BufferedImage image) {
        int width = Math.min(WIDEST, image.getWidth());
        if (width == image.getWidth()) {
            return image;
        }
        int height = Math.max(1, image.getHeight() * width / image.getWidth());
        BufferedImage small = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D draw = small.createGraphics();
        draw.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        draw.drawImage(image, 0, 0, width, height, null);
        draw.dispose();
        return small;
    }

    /** Gives the whole picture as an area. */
    static LampRegion whole(FilmSource.Facts facts) {
        return new LampRegion("all", 0, 0, facts.width(), facts.height());
    }

    /** Gives the area around the lamps with some room, in the picture. */
    static LampRegion around(List<LampRegion> lamps, FilmSource.Facts facts) {
        int left = lamps.stream().mapToInt(LampRegion::x).min().orElse(0);
        int top = lamps.stream().mapToInt(LampRegion::y).min().orElse(0);
        int right = lamps.stream().mapToInt(r -> r.x() + r.width()).max().orElse(facts.width());
        int bottom = lamps.stream().mapToInt(r -> r.y() + r.height()).max().orElse(facts.height());
        int room = Math.max(4, Math.max(right - left, bottom - top) / 8);
        left = Math.max(0, left - room);
        top = Math.max(0, top - room);
        right = Math.min(facts.width(), right + room);
        bottom = Math.min(facts.height(), bottom + room);
        return new LampRegion("lamps", left, top, right - left, bottom - top);
    }

    /** Gives the picture as an address that holds it. */
    String address() {
        try {
            ByteArrayOutputStream png = new ByteArrayOutputStream();
            ImageIO.write(image, "png", png);
            return "data:image/png;base64," + Base64.getEncoder().encodeToString(png.toByteArray());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
