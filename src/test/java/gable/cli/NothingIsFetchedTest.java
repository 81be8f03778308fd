package gable.cli;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import gable.fixture.PackageSketch;
import gable.threemf.Models;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Files name places outside in many ways; none is ever looked at (3MF Core 1.4, section 2.1.1). A
 * server on this machine takes note of who asks.
 */
class NothingIsFetchedTest {

  private static final String MODEL_TYPE =
      "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";

  private final List<String> asked = new CopyOnWriteArrayList<>();
  private HttpServer server;

  @TempDir private Path folder;

  @BeforeEach
  void listen() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext(
        "/",
        exchange -> {
          asked.add(exchange.getRequestURI().toString());
          exchange.sendResponseHeaders(404, -1);
          exchange.close();
        });
    server.start();
  }

  @AfterEach
  void hangUp() {
    server.stop(0);
  }

  private String address(String name) {
    return "http://127.0.0.1:" + server.getAddress().getPort() + "/" + name;
  }

  @Test
  void theServerHearsWhoAsks() throws IOException {
    try (Socket socket =
        new Socket(server.getAddress().getAddress(), server.getAddress().getPort())) {
      socket.getOutputStream().write("GET /hello HTTP/1.0\r\n\r\n".getBytes(US_ASCII));
      assertThat(socket.getInputStream().readAllBytes()).isNotEmpty();
    }
    assertThat(asked).containsExactly("/hello");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<!DOCTYPE model SYSTEM \"@/a.dtd\">",
        "<!DOCTYPE model PUBLIC \"p\" \"@/a.dtd\">",
        "<!DOCTYPE model [<!ENTITY % e SYSTEM \"@/a.ent\"> %e;]>",
        "<!DOCTYPE model [<!ENTITY e SYSTEM \"@/a.txt\">]>",
        "<?xml-stylesheet href=\"@/a.xsl\" type=\"text/xsl\"?>",
        "<?xml-model href=\"@/a.rng\"?>",
      })
  void notForADocumentTypeAnEntityOrAStyle(String prolog) throws IOException {
    String text = Models.model(Models.box(1), Attack.ITEM);
    String model = text.replace("<model", prolog.replace("@/", address("")) + "<model");
    String entity = prolog.contains("ENTITY e") ? "&e;" : "";
    callAll(Attack.packed(model.replace("<build>", "<build>" + entity)));
    assertThat(asked).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<xi:include xmlns:xi=\"http://www.w3.org/2001/XInclude\" href=\"@/a.model\"/>",
        "<x:y xmlns:x=\"urn:x\" xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\""
            + " xsi:schemaLocation=\"urn:x @/a.xsd\" xsi:noNamespaceSchemaLocation=\"@/b.xsd\"/>",
        "<x:y xmlns:x=\"@/namespace\" xml:base=\"@/\"/>",
        "<m:texture2d xmlns:m=\"http://schemas.microsoft.com/3dmanufacturing/material/2015/02\""
            + " id=\"9\" path=\"@/a.png\" contenttype=\"image/png\"/>",
        "<object id=\"9\"><components xmlns:p="
            + "\"http://schemas.microsoft.com/3dmanufacturing/production/2015/06\">"
            + "<component objectid=\"1\" p:path=\"@/a.model\"/></components></object>",
      })
  void notForAnythingThatAModelNames(String element) throws IOException {
    callAll(
        Attack.packed(
            Models.model(element.replace("@/", address("")) + Models.box(1), Attack.ITEM)));
    assertThat(asked).isEmpty();
  }

  @Test
  void notForRelationshipsOrContentTypes() throws IOException {
    String start = PackageSketch.relationship("r0", MODEL_TYPE, "/3D/3dmodel.model");
    for (String target : new String[] {address("a.model"), "//127.0.0.1/a", "file:///etc/passwd"}) {
      String outside = PackageSketch.relationship("r1", "http://example.org/t", target);
      for (String mode : new String[] {"", " TargetMode=\"External\""}) {
        String more = outside.replace("/>", mode + "/>");
        callAll(packed(PackageSketch.relationships(start, more)));
        callAll(
            packed(PackageSketch.relationships(more.replace("http://example.org/t", MODEL_TYPE))));
      }
    }
    String types =
        PackageSketch.types("")
            .replace("<Types", "<!DOCTYPE T SYSTEM \"" + address("t") + "\"><Types");
    callAll(PackageSketch.of(Attack.box()).item("[Content_Types].xml", types).bytes());
    assertThat(asked).isEmpty();
  }

  private static byte[] packed(String relationships) {
    return PackageSketch.of(Attack.box()).item("_rels/.rels", relationships).bytes();
  }

  private void callAll(byte[] file) throws IOException {
    Path input = Files.write(folder.resolve("in.3mf"), file);
    Path output = folder.resolve("out.3mf");
    for (Call call :
        List.of(
            Call.of("reshape", input.toString(), "-o", output.toString()),
            Call.of("inspect", input.toString()),
            Call.of("validate", input.toString()))) {
      assertThat(call.code()).as(call.err()).isIn(0, 3, 5, 6);
    }
    Files.deleteIfExists(output);
  }
}
