// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/keys_slip.h"

#include "app/shell/places.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"

#include <QBoxLayout>
#include <QGridLayout>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

// A key on its cap, as on the buttons.
class KeyCap : public QWidget {
public:
    explicit KeyCap(const QString& keys)
        : m_keys(keys) {
        const QSizeF cap = keyCapSize(keys);
        setFixedSize(static_cast<int>(std::ceil(cap.width())), static_cast<int>(std::ceil(cap.height())));
        setAccessibleName(keys);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paintKeyCap(painter, rect(), m_keys, tokens().ink);
    }

private:
    QString m_keys;
};

void addOnce(QVector<PlaceKey>& keys, const QString& caps, const QString& words) {
    const bool isThere = std::ranges::any_of(keys, [&](const PlaceKey& each) { return each.keys == caps; });
    if (!caps.isEmpty() && !words.isEmpty() && !isThere)
        keys.append({caps, words});
}

void addFrom(const QWidget& part, QVector<PlaceKey>& keys) {
    for (const auto* hint : part.findChildren<KeyHint*>())
        if (hint->isVisible())
            addOnce(keys, keyCapText(hint->keys()), hint->words());
    for (const auto* button : part.findChildren<Button*>())
        if (button->isVisible())
            addOnce(keys, button->keyText(), button->text());
    for (const auto* field : part.findChildren<Field*>())
        if (field->isVisible())
            addOnce(keys, field->keyText(), field->label());
}

} // namespace

QVector<PlaceKey> keysOf(Place& place) {
    QVector<PlaceKey> keys;
    addFrom(place, keys);
    if (const QWidget* tools = place.headerTools(); tools != nullptr)
        addFrom(*tools, keys);
    for (const PlaceKey& more : place.moreKeys())
        addOnce(keys, more.keys, more.words);
    return keys;
}

KeysSlip::KeysSlip(Place& place, const QString& placeWords, QWidget* parent)
    : Slip(parent)
    , m_title(tr("Keys"))
    , m_scroll(new VerticalScroll) {
    setObjectName(QStringLiteral("keysSlip"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(kSpace16, kSpace16, kSpace8, 0);
    column->setSpacing(kSpace12);
    column->addWidget(new Label(m_title, Type::CardTitle));
    column->addWidget(m_scroll, 1);
    m_scroll->setFocusPolicy(Qt::StrongFocus);
    addGroup(placeWords, keysOf(place));
    QVector<PlaceKey> everywhere;
    for (const BuiltPlace& each : builtPlaces())
        everywhere.append({keyCapText(each.keys()), each.words()});
    everywhere += {{tr("Ctrl K"), tr("Find an order, roll, lot or action")},
                   {tr("Ctrl Z"), tr("Undo the last action")},
                   {tr("Ctrl Shift Z"), tr("Redo what was undone")},
                   {tr("Tab"), tr("To the next part, Shift Tab to the one before")},
                   {tr("Esc"), tr("Close what is open")},
                   {tr("Alt ←"), tr("Back to the place that led here")},
                   {tr("Ctrl +"), tr("Larger text; Ctrl − smaller, Ctrl 0 as usual")},
                   {tr("F6"), tr("Day or evening light")},
                   {tr("F1"), tr("These keys")}};
    addGroup(tr("Everywhere"), everywhere);
    m_scroll->column()->addStretch();
}

void KeysSlip::begin() {
    m_scroll->setFocus(Qt::OtherFocusReason);
}

void KeysSlip::addGroup(const QString& heading, const QVector<PlaceKey>& keys) {
    if (keys.isEmpty())
        return;
    auto* rows = new QGridLayout;
    rows->setContentsMargins(kFocusRoom, 0, kSpace8, kSpace20);
    rows->setHorizontalSpacing(kSpace12);
    rows->setVerticalSpacing(kSpace8);
    rows->setColumnStretch(1, 1);
    rows->addWidget(new Label(heading, Type::SupportStrong, &Tokens::ink2), 0, 0, 1, 2);
    for (int at = 0; at < keys.size(); ++at) {
        rows->addWidget(new KeyCap(keys[at].keys), at + 1, 0, Qt::AlignRight | Qt::AlignTop);
        rows->addWidget((new Label(keys[at].words, Type::Body))->wrapped(), at + 1, 1);
    }
    m_scroll->column()->addLayout(rows);
}

} // namespace holdfast::app
