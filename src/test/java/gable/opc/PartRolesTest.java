package gable.opc;

import static gable.opc.Packages.relationship;
import static gable.opc.Packages.relationships;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** Source: 3MF Core 2.1.5 and 6.3, OPC 12, 3MF Secure Content 2 and 3. */
class PartRolesTest {

  private static final String START =
      relationship("rel0", RelationshipTypes.MODEL, "/3D/3dmodel.model");

  @Test
  void listsPartsThatNobodyKnowsUnlessTheyMustBePreserved() throws Exception {
    ZipBytes zip =
        packed(
            relationship("p", RelationshipTypes.MUST_PRESERVE, "/custom/kept.bin"),
            relationship("q", "http://example.org/settings", "/custom/settings.bin"));
    zip.add("custom/kept.bin", "a");
    zip.add("custom/settings.bin", "b");
    zip.add("custom/loose.bin", "c");
    try (OpcPackage opened = open(zip)) {
      PartRoles roles = PartRoles.of(opened);
      assertThat(roles.mustPreserve()).extracting(Part::name).containsExactly("/custom/kept.bin");
      assertThat(roles.unknownParts())
          .extracting(Part::name)
          .containsExactly("/custom/settings.bin", "/custom/loose.bin");
      assertThat(roles.isSigned()).isFalse();
      assertThat(roles.keyStore()).isEmpty();
    }
  }

  @Test
  void tellsWhichPartsASignatureCovers() throws Exception {
    try (OpcPackage opened = open(signed(signature("/3D/3dmodel.model", "/_rels/.rels")))) {
      PartRoles roles = PartRoles.of(opened);
      assertThat(roles.isSigned()).isTrue();
      assertThat(roles.isSigned("/3d/3DMODEL.model")).isTrue();
      assertThat(roles.isSigned("/_rels/.rels")).isTrue();
      assertThat(roles.isSigned("/3D/other.model")).isFalse();
      assertThat(roles.signatureParts())
          .extracting(Part::name)
          .containsExactly("/sign/origin.sigs", "/sign/one.xml", "/sign/one.cer");
      assertThat(roles.problems()).isEmpty();
    }
  }

  @Test
  void takesASignatureThatItCannotReadToCoverEverything() throws Exception {
    try (OpcPackage opened = open(signed("<Signature"))) {
      PartRoles roles = PartRoles.of(opened);
      assertThat(roles.isSigned("/3D/other.model")).isTrue();
      assertThat(roles.problems())
          .extracting(Problem::code)
          .containsExactly("opc-signature-unreadable");
    }
  }

  @Test
  void leavesNoTraceOfASignatureThatIsDroppedPartByPart() throws Exception {
    try (OpcPackage opened = open(signed(signature("/3D/3dmodel.model")))) {
      PackageEdit edit = PackageEdit.NONE;
      for (Part part : PartRoles.of(opened).signatureParts()) {
        edit = edit.drop(part.name());
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      PackageWriter.write(opened, edit, Compression.serial(6), out);
      try (OpcPackage written = OpcPackage.open(out.toByteArray(), OpcLimits.DEFAULT)) {
        assertThat(PartRoles.of(written).isSigned()).isFalse();
        assertThat(written.archive().items())
            .extracting(ZipItem::name)
            .noneMatch(n -> n.contains("sign"));
        assertThat(written.relationships()).hasSize(1);
      }
    }
  }

  @Test
  void findsEncryptedPartsByTheirMarkAndByTheKeyStore() throws Exception {
    ZipBytes zip = packed(relationship("k", RelationshipTypes.KEY_STORE, "/Secure/keys.xml"));
    zip.add(
        "3D/_rels/3dmodel.model.rels",
        relationships(
            relationship("m", RelationshipTypes.MODEL, "/3D/a.model"),
            relationship("e", RelationshipTypes.ENCRYPTED_FILE, "/3D/a.model"),
            relationship("n", RelationshipTypes.MODEL, "/3D/b.model")));
    zip.add("3D/a.model", "x");
    zip.add("3D/b.model", "y");
    zip.add(
        "Secure/keys.xml",
        "<keystore xmlns=\"http://schemas.microsoft.com/3dmanufacturing/securecontent/2019/04\">"
            + "<resourcedatagroup><resourcedata path=\"/3D/a.model\"/>"
            + "<resourcedata path=\"/3D/b.model\"/></resourcedatagroup></keystore>");
    try (OpcPackage opened = open(zip)) {
      PartRoles roles = PartRoles.of(opened);
      assertThat(roles.keyStore().orElseThrow().name()).isEqualTo("/Secure/keys.xml");
      assertThat(roles.encryptedParts())
          .extracting(Part::name)
          .containsExactly("/3D/a.model", "/3D/b.model");
      assertThat(roles.isEncrypted("/3D/3dmodel.model")).isFalse();
      assertThat(roles.problems())
          .extracting(Problem::code)
          .containsExactly("3mf-encrypted-unmarked");
    }
  }

  @Test
  void refusesAPackageWhoseKeyStoreCannotBeRead() throws Exception {
    ZipBytes zip = packed(relationship("k", RelationshipTypes.KEY_STORE, "/Secure/keys.xml"));
    zip.add("Secure/keys.xml", "<keystore a=\"\" a=\"\"/>");
    try (OpcPackage opened = open(zip)) {
      assertThatThrownBy(() -> PartRoles.of(opened))
          .isInstanceOf(PackageException.class)
          .hasMessageContaining("Secure/keys.xml, line 1");
    }
  }

  private static ZipBytes packed(String... entries) {
    String[] all = new String[entries.length + 1];
    all[0] = START;
    System.arraycopy(entries, 0, all, 1, entries.length);
    ZipBytes zip = ZipBytes.minimal();
    zip.replace("_rels/.rels", relationships(all).getBytes(StandardCharsets.UTF_8));
    return zip;
  }

  private static ZipBytes signed(String signature) {
    ZipBytes zip =
        packed(relationship("s", RelationshipTypes.SIGNATURE_ORIGIN, "/sign/origin.sigs"));
    zip.add("sign/origin.sigs", "");
    zip.add(
        "sign/_rels/origin.sigs.rels",
        relationships(relationship("s", RelationshipTypes.SIGNATURE, "one.xml")));
    zip.add("sign/one.xml", signature);
    zip.add(
        "sign/_rels/one.xml.rels",
        relationships(relationship("c", RelationshipTypes.CERTIFICATE, "one.cer")));
    zip.add("sign/one.cer", "certificate");
    return zip;
  }

  private static String signature(String... parts) {
    StringBuilder text =
        new StringBuilder("<Signature xmlns=\"http://www.w3.org/2000/09/xmldsig#\">");
    text.append("<SignedInfo><Reference URI=\"#package\"/></SignedInfo><Object><Manifest>");
    for (String part : parts) {
      text.append("<Reference URI=\"").append(part).append("?ContentType=a/b\"/>");
    }
    return text.append("</Manifest></Object></Signature>").toString();
  }

  private static OpcPackage open(ZipBytes zip) throws PackageException {
    return OpcPackage.open(zip.bytes(), OpcLimits.DEFAULT);
  }
}
