// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/note_row.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/table_measures.h"
#include "app/widgets/field.h"

#include <QHBoxLayout>
#include <QLineEdit>

namespace holdfast::app {

NoteRow::NoteRow(FairTableModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model)
    , m_note(new Field(tr("Note"))) {
    m_note->setObjectName(QStringLiteral("orderNote"));
    m_note->showKey(Qt::Key_I);
    m_note->editor()->setMaxLength(static_cast<int>(kMostNoteCharacters));
    m_note->setFixedHeight(kStallTarget);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_note);
    connect(m_note, &Field::edited, this, [this](const QString& text) {
        m_model.edit(Step::Note, [&](TableDraft& draft) { draft.note = text.toStdString(); });
    });
    connect(m_note, &Field::finished, this, [this] {
        m_model.endStep();
        emit left();
    });
}

void NoteRow::open() {
    show();
    m_note->editor()->setFocus(Qt::ShortcutFocusReason);
    m_note->editor()->end(false);
}

bool NoteRow::isOpen() const {
    return !m_model.draft().note.empty() || m_note->editor()->hasFocus();
}

void NoteRow::refresh() {
    const QString note = words(m_model.draft().note);
    if (note != m_note->text())
        m_note->setText(note);
}

} // namespace holdfast::app
