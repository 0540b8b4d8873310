package org.lifeline.file.output;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import org.jspecify.annotations.Nullable;

/**
 * One output of a command. What is written stands in an unfinished file until its {@link OutputSet} is committed; what goes
 * to a FIFO or a device is held back until then, unless it is written piece by piece. Not thread-safe.
 */
public final class Output {
    private final String name;
    private final Target target;
    private final FileKind kind;
    private final boolean formerOutput;
    private final FileSteps steps;
    private @Nullable Path part;
    private byte @Nullable [] held;

    Output(String name, Target target, FileKind kind, boolean formerOutput, FileSteps steps) {
        this.name = name;
        this.target = target;
        this.kind = kind;
        this.formerOutput = formerOutput;
        this.steps = steps;
    }

    String name() {
        return name;
    }

    Target target() {
        return target;
    }

    @Nullable
    Path part() {
        return part;
    }

    /** Looks at the place again just before the file is moved there; what is there by now must be a former output too. */
    Target recheck(boolean overwrite) throws OutputException {
        Target now = Target.of(name);
        if (now.stream() || !now.place().equals(target.place())) {
            throw OutputException.refused(name, "has become another place since this command began");
        }
        now.check(name, kind, formerOutput, overwrite);
        return now;
    }

    /**
     * Writes the whole output.
     *
     * @param text its content, written as UTF-8
     * @throws OutputException if it cannot be written
     */
    public void put(String text) throws OutputException {
        put(text.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Writes the whole output.
     *
     * @param bytes its content
     * @throws OutputException if it cannot be written
     */
    public void put(byte[] bytes) throws OutputException {
        if (target.stream()) {
            held = bytes.clone();
            return;
        }
        try (OutputStream out = part == null ? begin() : again()) {
            out.write(bytes);
        } catch (IOException e) {
            throw OutputException.failed(name, e);
        }
    }

    /**
     * Writes the output piece by piece: into the unfinished file, or at once to a FIFO or a device.
     *
     * @return the stream; it must be closed before the set is committed, and its errors name the output
     * @throws OutputException if it cannot be written
     */
    public OutputStream open() throws OutputException {
        try {
            return new BufferedOutputStream(target.stream() ? direct() : begin());
        } catch (IOException e) {
            throw OutputException.failed(name, e);
        }
    }

    private static OutputStream again() {
        throw new IllegalStateException("an output is written once");
    }

    private OutputStream direct() throws IOException {
        // A channel would want to know its position, which a FIFO has not.
        return new Named(new java.io.FileOutputStream(target.place().toFile(), true), null);
    }

    /** Writes to a FIFO or a device what was held back for it. */
    void writeHeld() throws OutputException {
        byte[] bytes = held;
        if (bytes == null) {
            return;
        }
        held = null;
        try (OutputStream out = direct()) {
            out.write(bytes);
        } catch (IOException e) {
            throw OutputException.failed(name, e);
        }
    }

    private OutputStream begin() throws IOException {
        Path file = PartFiles.beside(target.place());
        steps.before(FileSteps.Step.MAKE_PART, file);
        PartFiles.make(file, p -> Files.createFile(p));
        part = file;
        if (target.exists()) {
            keepOwnerAndMode(target.place(), file);
        }
        FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
        return new Named(new ChannelStream(channel), channel);
    }

    /** The new file is as accessible as the old one, before there is anything in it. */
    private void keepOwnerAndMode(Path from, Path to) throws IOException {
        PosixFileAttributeView old = Files.getFileAttributeView(from, PosixFileAttributeView.class);
        PosixFileAttributeView made =
                Files.getFileAttributeView(to, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
        if (old == null || made == null) {
            return;
        }
        PosixFileAttributes was = old.readAttributes();
        PosixFileAttributes is = made.readAttributes();
        // The mode comes last: a change of owner may take bits away.
        try {
            steps.before(FileSteps.Step.KEEP_OWNER, target.place());
            if (!was.group().equals(is.group())) {
                made.setGroup(was.group());
            }
            if (!was.owner().equals(is.owner())) {
                made.setOwner(was.owner());
            }
        } catch (FileSystemException e) {
            throw OutputException.refused(
                    name,
                    "belongs to user " + was.owner().getName() + " and group "
                            + was.group().getName() + ", for whom this user cannot make a file in its place");
        }
        made.setPermissions(was.permissions());
    }

    /** Writes to a channel, which an interrupt of the thread closes. */
    private static final class ChannelStream extends OutputStream {
        private final FileChannel channel;

        ChannelStream(FileChannel channel) {
            this.channel = channel;
        }

        @Override
        public void write(int b) throws IOException {
            write(new byte[] {(byte) b}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            ByteBuffer rest = ByteBuffer.wrap(bytes, from, length);
            while (rest.hasRemaining()) {
                channel.write(rest);
            }
        }

        @Override
        public void close() throws IOException {
            channel.close();
        }
    }

    /** A stream whose errors name the output and not the unfinished file. */
    private final class Named extends OutputStream {
        private final OutputStream out;
        private final @Nullable FileChannel channel;
        private boolean closed;

        Named(OutputStream out, @Nullable FileChannel channel) {
            this.out = out;
            this.channel = channel;
        }

        @Override
        public void write(int b) throws IOException {
            write(new byte[] {(byte) b}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            try {
                steps.before(FileSteps.Step.WRITE, target.place());
                out.write(bytes, from, length);
            } catch (IOException e) {
                throw OutputException.failed(name, e);
            }
        }

        @Override
        public void close() throws IOException {
            if (closed) {
                return;
            }
            closed = true;
            try (out) {
                if (channel != null && channel.isOpen()) {
                    steps.before(FileSteps.Step.FORCE, target.place());
                    channel.force(true);
                }
            } catch (IOException e) {
                throw OutputException.failed(name, e);
            }
        }
    }
}
