package gable.threemf;

/** Namespace names of 3MF and its extensions. */
public final class Names {

  /** Core. */
  public static final String CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

  /** Materials and properties. */
  public static final String MATERIAL =
      "http://schemas.microsoft.com/3dmanufacturing/material/2015/02";

  /** Production. */
  public static final String PRODUCTION =
      "http://schemas.microsoft.com/3dmanufacturing/production/2015/06";

  /** Alternatives of the production extension. */
  public static final String ALTERNATIVES =
      "http://schemas.microsoft.com/3dmanufacturing/production/alternatives/2021/04";

  /** Slices. */
  public static final String SLICE = "http://schemas.microsoft.com/3dmanufacturing/slice/2015/07";

  /** Triangle sets, a part of the core. */
  public static final String SETS =
      "http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07";

  /** Beam lattices. */
  public static final String BEAMS =
      "http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02";

  /** Balls of beam lattices. */
  public static final String BALLS =
      "http://schemas.microsoft.com/3dmanufacturing/beamlattice/balls/2020/07";

  /** Boolean shapes. */
  public static final String BOOLEANS =
      "http://schemas.3mf.io/3dmanufacturing/booleanoperations/2023/07";

  /** Displaced surfaces. */
  public static final String DISPLACEMENT =
      "http://schemas.3mf.io/3dmanufacturing/displacement/2023/10";

  /** Volumes. */
  public static final String VOLUMETRIC =
      "http://schemas.3mf.io/3dmanufacturing/volumetric/2022/01";

  /** Implicit functions. */
  public static final String IMPLICIT = "http://schemas.3mf.io/3dmanufacturing/implicit/2023/12";

  /** Encrypted parts. */
  public static final String SECURE =
      "http://schemas.microsoft.com/3dmanufacturing/securecontent/2019/04";

  /** The element numbers that the skeleton reader adds for JAXB; no file can hold them. */
  static final String NUMBERS = "gable:numbers";

  private Names() {}
}
