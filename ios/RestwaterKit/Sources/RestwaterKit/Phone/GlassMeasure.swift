import RestwaterCore

/// What the shell knows about its screen, in points.
public struct GlassMeasure: Equatable, Sendable {
    public var width, height: Double
    public var pointsPerMm: Double
    /// The text size set on the phone; 1 is the default.
    public var textScale: Double
    public var insetTop, insetBottom: Double
    /// How much of the height the phone's keyboard covers from below; 0 without one. The layout stays as it is: the keyboard
    /// comes and goes, and `Sheet.lifted` says how far the screen moves meanwhile.
    public var keyboard = 0.0

    public init(
        width: Double, height: Double, pointsPerMm: Double, textScale: Double = 1, insetTop: Double = 0, insetBottom: Double = 0
    ) {
        (self.width, self.height, self.pointsPerMm) = (width, height, pointsPerMm)
        (self.textScale, self.insetTop, self.insetBottom) = (textScale, insetTop, insetBottom)
    }

    /// In the form that the core needs: its pixels are our points.
    func glass(_ hand: Hand) -> Glass {
        Glass(
            widthPx: width, heightPx: height, pxPerMm: pointsPerMm, textScale: textScale, leftHanded: hand == .left,
            insetTopPx: insetTop, insetBottomPx: insetBottom
        )
    }
}

extension GlassMeasure {
    /// Points per millimetre of an iPhone's screen. iOS does not say; the number of pixels shows which family of
    /// screens it is. Densities of Apple's published specifications, from memory: 326 per inch on screens drawn at two
    /// pixels a point, 476 on the small 1080 x 2340, 401 on the 1080 x 1920, 458 to 460 on all others.
    public static func pointsPerMm(pixelWidth: Double, pixelHeight: Double, pixelsPerPoint: Double) -> Double {
        let (narrow, long) = (min(pixelWidth, pixelHeight), max(pixelWidth, pixelHeight))
        let perInch: Double
        switch (narrow, long) {
        case (1080, 2340): perInch = 476
        case (1080, 1920): perInch = 401
        case (..<900, _): perInch = 326
        default: perInch = 460
        }
        return perInch / pixelsPerPoint / 25.4
    }
}
