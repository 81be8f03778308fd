package gable.opc;

import java.util.Set;

/**
 * Types of relationships that have a meaning in 3MF (3MF Core 1.4 Appendix C.2, Materials E.2,
 * Secure Content, OPC Annex F).
 */
public final class RelationshipTypes {

  /** From the package to its root model part, and from that to further model parts. */
  public static final String MODEL = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";

  /** From a model part to a texture. */
  public static final String TEXTURE =
      "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dtexture";

  /** From a model part to its print ticket. */
  public static final String PRINT_TICKET =
      "http://schemas.microsoft.com/3dmanufacturing/2013/01/printticket";

  /** From the package or a model part to a picture of it. */
  public static final String THUMBNAIL =
      "http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail";

  /** From the package to its core properties. */
  public static final String CORE_PROPERTIES =
      "http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties";

  /** From the package to a part that must be kept although nobody knows what it is. */
  public static final String MUST_PRESERVE =
      "http://schemas.openxmlformats.org/package/2006/relationships/mustpreserve";

  /** From the package to the origin of its digital signatures. */
  public static final String SIGNATURE_ORIGIN =
      "http://schemas.openxmlformats.org/package/2006/relationships/digital-signature/origin";

  /** From the origin to a digital signature. */
  public static final String SIGNATURE =
      "http://schemas.openxmlformats.org/package/2006/relationships/digital-signature/signature";

  /** From a digital signature to a certificate. */
  public static final String CERTIFICATE =
      "http://schemas.openxmlformats.org/package/2006/relationships/digital-signature/certificate";

  /** From the package to the keys of its encrypted parts. */
  public static final String KEY_STORE =
      "http://schemas.microsoft.com/3dmanufacturing/2019/04/keystore";

  /** To an encrypted part, beside the relationship that says what it is. */
  public static final String ENCRYPTED_FILE =
      "http://schemas.openxmlformats.org/package/2006/relationships/encryptedfile";

  /** All of the above. */
  static final Set<String> KNOWN =
      Set.of(
          MODEL,
          TEXTURE,
          PRINT_TICKET,
          THUMBNAIL,
          CORE_PROPERTIES,
          MUST_PRESERVE,
          SIGNATURE_ORIGIN,
          SIGNATURE,
          CERTIFICATE,
          KEY_STORE,
          ENCRYPTED_FILE);

  private RelationshipTypes() {}
}
