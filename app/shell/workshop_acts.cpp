// SPDX-License-Identifier: GPL-3.0-or-later
// What the shell does itself: undo, redo, light, size of text, keys.

#include "app/desk/background_work.h"
#include "app/desk/machine_settings.h"
#include "app/shell/about_slip.h"
#include "app/shell/foot_line.h"
#include "app/shell/keys_slip.h"
#include "app/shell/seat.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"

#include <QApplication>

namespace holdfast::app {

void Workshop::act(ShellAct act) {
    switch (act) {
    case ShellAct::Undo:
        undo();
        return;
    case ShellAct::Redo:
        redo();
        return;
    case ShellAct::ChangeLight:
        changeLight();
        return;
    case ShellAct::LargerText:
        changeTextSize(nextTextSize(textSize(), 1));
        return;
    case ShellAct::SmallerText:
        changeTextSize(nextTextSize(textSize(), -1));
        return;
    case ShellAct::UsualText:
        changeTextSize(kUsualTextSize);
        return;
    case ShellAct::ShowKeys:
        openSlip(new KeysSlip(*place(), builtPlace(m_current)->words(), m_slips));
        return;
    case ShellAct::About:
        showAbout();
        return;
    }
}

void Workshop::showAbout() {
    openSlip(makeAboutSlip(m_desk, [this] { showLicences(); }, m_slips));
}

void Workshop::showLicences() {
    openSlip(makeLicencesSlip(m_desk, [this] { showAbout(); }, m_slips));
}

// The window opens again for it, so what is half typed in a form must not be lost.
void Workshop::changeTextSize(int percent) {
    if (percent == textSize())
        m_foot->showWords(tr("Text is at %1 % already.").arg(percent));
    else if (m_slips->isOpen())
        m_foot->showWords(tr("Close the form first: the window opens again with text of another size."));
    else if (m_work->isBusy())
        m_foot->showWords(tr("Other work is under way; wait for it or stop it first."));
    else if (m_desk.file().path().empty())
        m_foot->showWords(tr("This shop has no file to open again."));
    else
        emit textSizeAsked(percent);
}

// What is half done in the place comes before what is in the journal, as the foot says.
void Workshop::undo() {
    if (Place* shown = place(); shown != nullptr && !shown->ownSteps().undo.isEmpty()) {
        shown->undoOwn();
        return;
    }
    db::Shop& file = m_desk.file();
    const auto last = file.read([&](db::Connection&) { return file.lastUndoable(); });
    if (!m_desk.done(last))
        return;
    if (!last->has_value()) {
        m_foot->showWords(tr("There is nothing to undo."));
        return;
    }
    reverse(**last);
}

void Workshop::redo() {
    if (Place* shown = place(); shown != nullptr && !shown->ownSteps().redo.isEmpty()) {
        shown->redoOwn();
        return;
    }
    db::Shop& file = m_desk.file();
    const auto last = file.read([&](db::Connection&) { return file.lastRedoable(); });
    if (!m_desk.done(last))
        return;
    if (!last->has_value()) {
        m_foot->showWords(tr("There is nothing to redo. What was undone before other work is put back in the "
                             "order’s history."));
        return;
    }
    reverse(**last);
}

void Workshop::changeLight() {
    const Light other = light() == Light::Day ? Light::Evening : Light::Day;
    setLight(*qApp, other);
    keepLight(m_desk.file(), other);
}

} // namespace holdfast::app
