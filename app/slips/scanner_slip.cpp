// SPDX-License-Identifier: GPL-3.0-or-later
// What the scanner at this computer types before a code.
#include "app/desk/machine_settings.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class ScannerSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(ScannerSlip)

public:
    ScannerSlip(ShopDesk& shopDesk, QWidget* parent)
        : FormSlip(shopDesk, tr("Set up a scanner"),
                   tr("Of this computer. A scanner that types like a keyboard and ends with Enter works as "
                      "it is."),
                   parent) {
        form().line("prefix", tr("It types before each code"), scannerPrefix());
        form().optional("prefix");
        form().note(
            tr("Leave it empty unless the scanner is slow, as some wireless ones are: then set the scanner "
               "to type a sign that you never type yourself, such as ~, and write the same sign here."));
        setAction(tr("Save the scanner’s setting"));
    }

protected:
    void act() override {
        const QString prefix = form().text("prefix").trimmed();
        const bool isTyped = std::ranges::all_of(
            prefix, [](QChar each) { return each > QLatin1Char(' ') && each.unicode() < 127; });
        if (!isTyped || prefix.size() > kLongestPrefix) {
            form().setError(
                "prefix",
                tr("Up to %1 letters, digits or signs of a plain keyboard, no spaces.").arg(kLongestPrefix));
            return;
        }
        keepScannerPrefix(prefix);
        desk().say(prefix.isEmpty()
                       ? tr("Codes are expected with nothing before them.")
                       : tr("Codes are expected with %1 before them, or with nothing.").arg(prefix));
        emit desk().errandDone(); // the Back room says so too
        finish();
    }
};

} // namespace

Slip* makeScanner(ShopDesk& desk, const SlipTarget&, QWidget* parent) {
    return new ScannerSlip(desk, parent);
}

} // namespace holdfast::app
