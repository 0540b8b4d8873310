package org.lifeline.examples.browser;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Runs Chromium without a window on files of a folder, with no way out to a network. */
final class Chromium {
    private static final List<String> NAMES = List.of("chromium", "chromium-browser");
    private static final int PATIENCE_MINUTES = 4;

    /** A page of a PDF file is an object of this type; the tree of pages has another. */
    private static final Pattern PAGE = Pattern.compile("/Type\\s*/Page(?!s)\\b");

    private final Path program;
    private final Path folder;

    private Chromium(Path program, Path folder) {
        this.program = program;
        this.folder = folder;
    }

    /** The browser, if it is installed. */
    static Optional<Chromium> in(Path folder) {
        return Stream.of(System.getenv("PATH").split(":", -1))
                .flatMap(d -> NAMES.stream().map(n -> Path.of(d, n)))
                .filter(Files::isExecutable)
                .findFirst()
                .map(p -> new Chromium(p, folder));
    }

    private String run(Path page, String... options) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                program.toString(),
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--host-resolver-rules=MAP * ~NOTFOUND",
                "--user-data-dir=" + folder.resolve("profile"),
                "--no-pdf-header-footer"));
        command.addAll(List.of(options));
        command.add(page.toUri().toString());
        Path out = folder.resolve("out.txt");
        Process process = new ProcessBuilder(command)
                .redirectOutput(out.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        if (!process.waitFor(PATIENCE_MINUTES, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new IllegalStateException("the browser did not finish");
        }
        return Files.readString(out);
    }

    /** Number of pages of a page in print. */
    int pages(Path page) throws IOException, InterruptedException {
        Path pdf = folder.resolve("page.pdf");
        Files.deleteIfExists(pdf);
        run(page, "--print-to-pdf=" + pdf);
        Matcher m = PAGE.matcher(new String(Files.readAllBytes(pdf), StandardCharsets.ISO_8859_1));
        int count = 0;
        while (m.find()) {
            count++;
        }
        return count;
    }

    /** The document after its scripts have run, in frames of its own. */
    String document(Path page) throws IOException, InterruptedException {
        return run(page, "--allow-file-access-from-files", "--virtual-time-budget=4000", "--dump-dom");
    }
}
