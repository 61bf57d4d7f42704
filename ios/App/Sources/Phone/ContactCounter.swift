import RestwaterKit
import UIKit
#if canImport(UIKit.UIGestureRecognizerSubclass)
import UIKit.UIGestureRecognizerSubclass
#endif

/// Counts contacts on the screen and never handles one: a palm or running drops of water beside the thumb must not log
/// anything.
final class ContactCounter: UIGestureRecognizer, UIGestureRecognizerDelegate {
    private let contacts: Contacts
    private var down: Set<UITouch> = []

    init(_ contacts: Contacts) {
        self.contacts = contacts
        super.init(target: nil, action: nil)
        cancelsTouchesInView = false
        delaysTouchesBegan = false
        delaysTouchesEnded = false
        delegate = self
    }

    override func touchesBegan(_ touches: Set<UITouch>, with event: UIEvent) { change { down.formUnion(touches) } }
    override func touchesMoved(_ touches: Set<UITouch>, with event: UIEvent) { change {} }
    override func touchesEnded(_ touches: Set<UITouch>, with event: UIEvent) { change { down.subtract(touches) } }
    override func touchesCancelled(_ touches: Set<UITouch>, with event: UIEvent) { change { down.subtract(touches) } }

    override func reset() {
        super.reset()
        change { down = [] }
    }

    private func change(_ set: () -> Void) {
        set()
        // The radius is in points, and is that of the contact's longer axis.
        let widest = down.map { 2 * $0.majorRadius }.max() ?? 0
        contacts.onGlass(down.count, widestMm: widest / GlassMeasure.pointsPerMmHere)
    }

    func gestureRecognizer(_ own: UIGestureRecognizer, shouldRecognizeSimultaneouslyWith other: UIGestureRecognizer) -> Bool { true }
}
