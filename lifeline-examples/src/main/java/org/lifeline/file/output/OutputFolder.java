package org.lifeline.file.output;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A folder of outputs with a list of what they are. A folder that is there already and holds files of such names must have
 * the list that names them. What a former list names and this set does not write again is removed, so that no part of an
 * older report stands beside those of a newer one. Not thread-safe.
 */
public final class OutputFolder {
    /** The list of parts. */
    public static final String INDEX = "index.csv";

    /** Names of parts: a word, a number, an ending. */
    private static final Pattern NAME = Pattern.compile("[a-z]+-[0-9]{3,9}\\.(csv|svg)");

    private static final int LARGEST_INDEX = 10_000_000;

    private final OutputSet set;
    private final String name;
    private final Path folder;
    private final Set<String> former;
    private final Set<String> written = new HashSet<>();

    private OutputFolder(OutputSet set, String name, Path folder, Set<String> former) {
        this.set = set;
        this.name = name;
        this.folder = folder;
        this.former = former;
    }

    static OutputFolder claim(OutputSet set, String name, boolean overwrite) throws OutputException {
        Path folder;
        try {
            folder = FileNames.path(name);
        } catch (IllegalArgumentException e) {
            throw OutputException.refused(name, String.valueOf(e.getMessage()));
        }
        if (!Files.exists(folder)) {
            if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
                throw OutputException.refused(name, "is a link that leads nowhere");
            }
            Path above = folder.toAbsolutePath();
            while (above != null && !Files.exists(above)) {
                above = above.getParent();
            }
            if (above == null || !Files.isDirectory(above) || Target.readOnly(above)) {
                throw OutputException.refused(name, "cannot be made a folder");
            }
            return new OutputFolder(set, name, folder, Set.of());
        }
        if (!Files.isDirectory(folder)) {
            throw OutputException.refused(name, "is no folder");
        }
        if (Target.readOnly(folder)) {
            throw OutputException.refused(name, "is read-only");
        }
        try {
            Set<String> former = former(folder);
            try (Stream<Path> files = Files.list(folder)) {
                boolean strange = files.map(p -> String.valueOf(p.getFileName()))
                        .anyMatch(n -> (NAME.matcher(n).matches() || n.equals(INDEX)) && !former.contains(n));
                if (strange && !overwrite) {
                    throw OutputException.refused(
                            name, "holds files that no " + FileKind.INDEX + " names; --overwrite replaces them");
                }
            }
            return new OutputFolder(set, name, folder, former);
        } catch (OutputException e) {
            throw e;
        } catch (IOException e) {
            throw OutputException.refused(name, FileNames.reason(e));
        }
    }

    /** What the list of a former report names. */
    private static Set<String> former(Path folder) throws IOException {
        Set<String> names = new HashSet<>();
        Path index = folder.resolve(INDEX);
        if (!Files.isRegularFile(index) || Files.size(index) > LARGEST_INDEX) {
            return names;
        }
        String text = new String(Files.readAllBytes(index), StandardCharsets.ISO_8859_1);
        if (!FileKind.INDEX.recognises(text)) {
            return names;
        }
        names.add(INDEX);
        text.lines()
                .map(l -> l.substring(0, Math.max(0, l.indexOf(','))))
                .filter(n -> NAME.matcher(n).matches())
                .forEach(names::add);
        return names;
    }

    /**
     * Writes a part, or the list of parts as the last of them.
     *
     * @param file the name of the file in this folder: {@link #INDEX}, or a word, a number and an ending
     * @param text its content, written as UTF-8
     * @throws OutputException if it cannot be written
     */
    public void put(String file, String text) throws OutputException {
        boolean list = file.equals(INDEX);
        if (!list && !NAME.matcher(file).matches()) {
            throw new IllegalArgumentException(file + " is no name of a part");
        }
        set.makeFolder(name, folder);
        written.add(file);
        set.claim(folder.resolve(file).toString(), list ? FileKind.INDEX : FileKind.PART, former.contains(file))
                .put(text);
        if (list) {
            former.stream().filter(n -> !written.contains(n)).forEach(n -> set.removeWhenDone(folder.resolve(n)));
        }
    }
}
