import Foundation

extension Echo {
    /// The tones as a sound file, for the system to play while the app does not run: RIFF WAVE, 16 bit PCM, one channel
    /// ("Multimedia Programming Interface and Data Specifications 1.0", Microsoft and IBM, 1991).
    public func wav(rate: Double) -> Data {
        let samples = samples(rate: rate)
        var data = Data()
        func put(_ text: String) { data.append(contentsOf: text.utf8) }
        func put(_ value: some FixedWidthInteger) { withUnsafeBytes(of: value.littleEndian) { data.append(contentsOf: $0) } }
        let bytes = UInt32(2 * samples.count)
        put("RIFF")
        put(36 + bytes)
        put("WAVEfmt ")
        put(UInt32(16))
        put(UInt16(1))  // PCM
        put(UInt16(1))  // one channel
        put(UInt32(rate))
        put(UInt32(rate) * 2)
        put(UInt16(2))
        put(UInt16(16))
        put("data")
        put(bytes)
        for sample in samples { put(Int16(max(-1, min(1, sample)) * 32_767)) }
        return data
    }
}
