// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/form_row.h"

#include "app/theme/measures.h"
#include "app/widgets/banner.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"

#include <QBoxLayout>

namespace holdfast::app {

FormRow::FormRow(const QString& label, QWidget* control, QWidget* parent)
    : QWidget(parent)
    , m_field(qobject_cast<Field*>(control)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(kFocusRoom + 1);
    m_label = new Label(QString(), Type::Small, &Tokens::ink2);
    m_label->wrapped();
    column->addWidget(m_label);
    column->addWidget(control);
    setLabel(label);
    // A part is as high as it needs to be, unless its control may grow.
    const bool grows = control->sizePolicy().verticalPolicy() == QSizePolicy::Expanding;
    setSizePolicy(QSizePolicy::Expanding, grows ? QSizePolicy::Expanding : QSizePolicy::Minimum);
}

void FormRow::setLabel(const QString& label) {
    m_label->setText(label);
    m_label->setVisible(!label.isEmpty());
}

void FormRow::setError(const QString& words) {
    m_error = words;
    if (m_field != nullptr) {
        m_field->setError(words);
        return;
    }
    if (m_wrong == nullptr) {
        if (words.isEmpty())
            return;
        m_wrong = new Banner;
        layout()->addWidget(m_wrong);
    }
    m_wrong->set(Tone::Held, QString(), words, QStringLiteral("caution"));
    m_wrong->setVisible(!words.isEmpty());
}

} // namespace holdfast::app
