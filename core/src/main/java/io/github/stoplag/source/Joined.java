package io.github.stoplag.source;

import java.util.List;

/** The evidence of several things together; equal if the things are. */
record Joined(List<Evident> parts) implements Evident {
    @Override
    public Evidence evidence() {
        return Evidence.joined(parts.stream().map(Evident::evidence).toList());
    }
}
