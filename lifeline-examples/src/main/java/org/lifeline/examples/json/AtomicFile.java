package org.lifeline.examples.json;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/** Writes a file beside its place and moves it there in one step, so that nobody ever sees half of it. */
public final class AtomicFile {
    private AtomicFile() {}

    /**
     * Writes a whole file; if that fails, a file that was there before stays as it was.
     *
     * @param target the file
     * @param bytes its content
     * @throws IOException if it cannot be written
     */
    public static void write(Path target, byte[] bytes) throws IOException {
        Path place = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
        if (Files.isDirectory(place)) {
            throw new IOException("is a directory");
        }
        Path part = place.resolveSibling(place.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            try (FileChannel out = FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
                ByteBuffer rest = ByteBuffer.wrap(bytes);
                while (rest.hasRemaining()) {
                    out.write(rest);
                }
                out.force(true);
            }
            try {
                Files.move(part, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(part, place, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(part);
        }
    }
}
