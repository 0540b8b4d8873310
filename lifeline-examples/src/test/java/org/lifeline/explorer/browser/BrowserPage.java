package org.lifeline.explorer.browser;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/**
 * One page in Chromium without a window, driven through the browser's own protocol for developers: mouse, keys, scripts,
 * screenshots; what the console says and what the page asks of a network is kept.
 */
final class BrowserPage implements AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int PATIENCE_SECONDS = 180;

    private final Process process;
    private final WebSocket socket;
    private final AtomicInteger number = new AtomicInteger();
    private final Map<Integer, CompletableFuture<JsonNode>> waiting = new ConcurrentHashMap<>();
    private final List<String> console = new CopyOnWriteArrayList<>();
    private final List<String> requests = new CopyOnWriteArrayList<>();

    private BrowserPage(Process process, URI page) throws ExecutionException, InterruptedException {
        this.process = process;
        this.socket = HttpClient.newHttpClient()
                .newWebSocketBuilder()
                .buildAsync(page, new Listener())
                .get();
    }

    /** The browser, if it is installed. */
    static Optional<Path> program() {
        return Stream.of(System.getenv("PATH").split(":", -1))
                .flatMap(d -> Stream.of(Path.of(d, "chromium"), Path.of(d, "chromium-browser")))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** Begins a browser with an empty page; its files go into a folder. */
    static BrowserPage begin(Path program, Path folder) throws Exception {
        Process process = new ProcessBuilder(
                        program.toString(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--disable-dev-shm-usage",
                        "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
                        "--remote-debugging-port=0",
                        "--user-data-dir=" + folder.resolve("profile"),
                        "about:blank")
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        try {
            URI browser = address(process);
            HttpClient http = HttpClient.newHttpClient();
            URI list = URI.create("http://" + browser.getAuthority() + "/json/list");
            long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
            while (System.nanoTime() < end) {
                String said = http.send(HttpRequest.newBuilder(list).build(), HttpResponse.BodyHandlers.ofString())
                        .body();
                for (JsonNode each : JSON.readTree(said)) {
                    if (each.path("type").asText().equals("page")) {
                        BrowserPage page = new BrowserPage(
                                process,
                                URI.create(each.path("webSocketDebuggerUrl").asText()));
                        for (String domain : List.of("Page", "Runtime", "Log", "Network")) {
                            page.call(domain + ".enable", Map.of());
                        }
                        return page;
                    }
                }
                Thread.sleep(100);
            }
            throw new IllegalStateException("the browser has no page");
        } catch (Exception e) {
            process.destroyForcibly();
            throw e;
        }
    }

    private static URI address(Process process) throws IOException {
        BufferedReader in = new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8));
        String line = in.readLine();
        while (line != null) {
            int at = line.indexOf("ws://");
            if (at >= 0) {
                Thread rest = new Thread(() -> in.lines().forEach(l -> {}), "browser output");
                rest.setDaemon(true);
                rest.start();
                return URI.create(line.substring(at).trim());
            }
            line = in.readLine();
        }
        throw new IllegalStateException("the browser did not begin");
    }

    private final class Listener implements WebSocket.Listener {
        private final StringBuilder text = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket webSocket, CharSequence data, boolean last) {
            text.append(data);
            if (last) {
                try {
                    take(JSON.readTree(text.toString()));
                } catch (IOException e) {
                    console.add("unreadable: " + e);
                }
                text.setLength(0);
            }
            webSocket.request(1);
            return CompletableFuture.completedFuture(null);
        }
    }

    private void take(JsonNode message) {
        CompletableFuture<JsonNode> answer = waiting.remove(message.path("id").asInt(-1));
        if (answer != null) {
            answer.complete(message);
            return;
        }
        JsonNode params = message.path("params");
        switch (message.path("method").asText()) {
            case "Runtime.consoleAPICalled" -> console.add(params.path("type").asText() + ": " + params.path("args"));
            case "Runtime.exceptionThrown" -> console.add("exception: " + params.path("exceptionDetails"));
            case "Log.entryAdded" -> console.add(params.path("entry").toString());
            case "Network.requestWillBeSent" ->
                requests.add(params.path("request").path("url").asText());
            default -> {}
        }
    }

    /** Calls the browser and waits for its answer. */
    JsonNode call(String method, Map<String, ?> parameters) throws Exception {
        int id = number.incrementAndGet();
        CompletableFuture<JsonNode> answer = new CompletableFuture<>();
        waiting.put(id, answer);
        ObjectNode message = JSON.createObjectNode().put("id", id).put("method", method);
        message.set("params", JSON.valueToTree(parameters));
        socket.sendText(message.toString(), true).get();
        JsonNode said = answer.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
        if (said.has("error")) {
            throw new IllegalStateException(method + ": " + said.path("error"));
        }
        return said.path("result");
    }

    /** The value of an expression of the page's script; a promise is waited for. */
    JsonNode value(String expression) throws Exception {
        JsonNode said =
                call("Runtime.evaluate", Map.of("expression", expression, "awaitPromise", true, "returnByValue", true));
        if (said.has("exceptionDetails")) {
            throw new IllegalStateException(expression + ": " + said.path("exceptionDetails"));
        }
        return said.path("result").path("value");
    }

    /** Waits until an expression is true. */
    void until(String expression) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        while (!value("Boolean(" + expression + ")").asBoolean()) {
            if (System.nanoTime() > end) {
                throw new IllegalStateException("waited in vain for " + expression + "; console: " + console);
            }
            Thread.sleep(50);
        }
    }

    /** Opens an address in a window of a size [px]. */
    void open(String address, int width, int height) throws Exception {
        size(width, height);
        call("Page.navigate", Map.of("url", address));
        until("document.readyState === 'complete'");
    }

    /** Sets the size of the window [px]. */
    void size(int width, int height) throws Exception {
        call(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 600));
    }

    /** One event of the mouse, its left button [px]. */
    void mouse(String type, double x, double y) throws Exception {
        call(
                "Input.dispatchMouseEvent",
                Map.of("type", type, "x", x, "y", y, "button", "left", "buttons", 1, "clickCount", 1));
    }

    /** One key pressed and let go, by its name. */
    void key(String name, int code) throws Exception {
        for (String type : List.of("rawKeyDown", "keyUp")) {
            call(
                    "Input.dispatchKeyEvent",
                    Map.of("type", type, "key", name, "code", name, "windowsVirtualKeyCode", code));
        }
    }

    /** A picture of the whole page, PNG. */
    byte[] picture(boolean whole) throws Exception {
        JsonNode said = call("Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", whole));
        return Base64.getDecoder().decode(said.path("data").asText());
    }

    /** What the console has said. */
    List<String> console() {
        return List.copyOf(console);
    }

    /** What was asked of the network or of files. */
    List<String> requests() {
        return List.copyOf(requests);
    }

    @Override
    public void close() {
        socket.abort();
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
        try {
            process.waitFor(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
