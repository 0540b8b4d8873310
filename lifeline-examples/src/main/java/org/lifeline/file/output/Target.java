package org.lifeline.file.output;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * Where an output goes: a regular file, there or not yet, or something that is written to directly.
 *
 * <p>Immutable and thread-safe.
 *
 * @param place the file itself where a link led to it; a FIFO or device as it was named
 * @param stream true for a FIFO or a character device
 * @param exists true if there is something at the place
 */
record Target(Path place, boolean stream, boolean exists) {
    /** What the streams of this process lead to, where the system tells it; what is printed there is told first. */
    private static final Map<Path, String> STREAMS = streams();

    /** How much of a file is searched for the mark of a design [bytes]; a longer file is no design that could be read. */
    private static final int LARGEST_DESIGN = 10_000_000;

    /** Bits of the mode that hold the type of a file, and two types; POSIX, {@code sys/stat.h}, values of Linux and BSD. */
    private static final int TYPE = 0170000;

    private static final int FIFO = 0010000;
    private static final int CHARACTER_DEVICE = 0020000;

    private static Map<Path, String> streams() {
        Map<Path, String> streams = new LinkedHashMap<>();
        streams.put(Path.of("/proc/self/fd/1"), "output");
        streams.put(Path.of("/proc/self/fd/2"), "error");
        return streams;
    }

    /** Looks at a place; what cannot be written to is refused. */
    static Target of(String name) throws OutputException {
        Path path;
        try {
            path = FileNames.path(name);
        } catch (IllegalArgumentException e) {
            throw OutputException.refused(name, String.valueOf(e.getMessage()));
        }
        try {
            return of(name, path);
        } catch (OutputException e) {
            throw e;
        } catch (IOException e) {
            throw OutputException.refused(name, FileNames.reason(e));
        }
    }

    private static Target of(String name, Path path) throws IOException {
        BasicFileAttributes found;
        try {
            found = Files.readAttributes(path, BasicFileAttributes.class);
        } catch (NoSuchFileException e) {
            if (Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
                throw OutputException.refused(name, "is a link that leads nowhere");
            }
            return new Target(newFile(name, path), false, false);
        }
        if (found.isDirectory()) {
            throw OutputException.refused(name, "is a folder");
        }
        if (readOnly(path)) {
            throw OutputException.refused(name, "is read-only");
        }
        if (found.isOther()) {
            int type = type(path);
            if (type == FIFO || type == CHARACTER_DEVICE) {
                if (type == FIFO) {
                    refuseStandardStreams(name, path);
                }
                return new Target(path, true, true);
            }
            throw OutputException.refused(name, "is neither a file nor a FIFO nor a character device");
        }
        if (namesAFolder(name)) {
            throw OutputException.refused(name, "is no folder");
        }
        refuseStandardStreams(name, path);
        Path place = path.toRealPath();
        folder(name, place);
        return new Target(place, false, true);
    }

    private static Path newFile(String name, Path path) throws IOException {
        Path last = path.getFileName();
        if (last == null) {
            throw OutputException.refused(name, "is no name of a file");
        }
        if (namesAFolder(name)) {
            throw OutputException.refused(name, "is the name of a folder");
        }
        return folder(name, path.toAbsolutePath()).toRealPath().resolve(last);
    }

    /** The folder of a file; it must be there and take new files, since a file is moved into its place. */
    private static Path folder(String name, Path file) throws OutputException {
        Path folder = file.getParent();
        if (folder == null || !Files.exists(folder)) {
            throw OutputException.refused(name, "its folder does not exist");
        }
        if (!Files.isDirectory(folder)) {
            throw OutputException.refused(name, "what should be its folder is a file");
        }
        if (readOnly(folder)) {
            throw OutputException.refused(name, "its folder is read-only");
        }
        return folder;
    }

    /** Nobody is meant to write here, or this user may not; the mode counts also for one who may override it. */
    static boolean readOnly(Path path) {
        if (!Files.isWritable(path)) {
            return true;
        }
        try {
            PosixFileAttributeView view = Files.getFileAttributeView(path, PosixFileAttributeView.class);
            if (view == null) {
                return false;
            }
            Set<PosixFilePermission> mode = view.readAttributes().permissions();
            return !mode.contains(PosixFilePermission.OWNER_WRITE)
                    && !mode.contains(PosixFilePermission.GROUP_WRITE)
                    && !mode.contains(PosixFilePermission.OTHERS_WRITE);
        } catch (IOException e) {
            return false;
        }
    }

    private static int type(Path path) throws IOException {
        if (!path.getFileSystem().supportedFileAttributeViews().contains("unix")) {
            return 0;
        }
        return Files.getAttribute(path, "unix:mode") instanceof Integer mode ? mode & TYPE : 0;
    }

    /** A path forgets the separator at the end of a name, by which somebody meant a folder. */
    private static boolean namesAFolder(String name) {
        return name.endsWith("/") || name.endsWith(File.separator);
    }

    /** What is printed, and what is wrong, goes to the standard streams; a file or FIFO behind one is the place of that output. */
    private static void refuseStandardStreams(String name, Path path) throws IOException {
        for (Map.Entry<Path, String> each : STREAMS.entrySet()) {
            if (Files.exists(each.getKey()) && Files.isSameFile(each.getKey(), path)) {
                throw OutputException.refused(
                        name, "is where the standard " + each.getValue() + " of this command goes");
            }
        }
    }

    /** Refuses a file that is there and is no former output, and always a design. */
    void check(String name, FileKind kind, boolean formerOutput, boolean overwrite) throws OutputException {
        if (stream || !exists) {
            return;
        }
        String text;
        try (InputStream in = Files.newInputStream(place)) {
            // Every byte is a character here, so that nothing in a file that is no text stops the search.
            text = new String(in.readNBytes(LARGEST_DESIGN), StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            throw OutputException.refused(name, FileNames.reason(e));
        }
        if (FileKind.isDesign(text)) {
            throw OutputException.refused(name, "is a design file, which no output replaces");
        }
        String head = text.substring(0, Math.min(text.length(), FileKind.HEAD));
        if (!overwrite && !formerOutput && !head.isEmpty() && !kind.recognises(head)) {
            throw OutputException.refused(name, "is there already and is no " + kind + "; --overwrite replaces it");
        }
    }

    /** Tells whether two are one place, through links too. */
    boolean same(Path other) {
        try {
            return (exists && Files.exists(other))
                    ? Files.isSameFile(place, other)
                    : place.equals(other.toAbsolutePath());
        } catch (IOException e) {
            return place.equals(other.toAbsolutePath().normalize());
        }
    }
}
