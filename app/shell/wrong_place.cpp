// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/wrong_place.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"

#include <QVBoxLayout>

namespace holdfast::app {

namespace {

// More are counted: the list of a whole check, by the command line, names as many as anybody can use.
constexpr std::size_t kMostShown = 200;

} // namespace

WrongPlace::WrongPlace(ShopDesk& shopDesk, QWidget* parent)
    : Place(shopDesk, parent) {
    setObjectName(QStringLiteral("wrongPlace"));
    setAccessibleName(tr("What is wrong in the shop file"));
    setFocusPolicy(Qt::StrongFocus);
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(kGutter, 0, kGutter, kGutter);
    page->setSpacing(kCardStack);
    m_lead = new Banner(this);
    m_lead->setObjectName(QStringLiteral("wrongLead"));
    page->addWidget(m_lead);
    makeActs(*page);
    m_card = new Card(tr("One by one"), this);
    m_list = new VerticalScroll(m_card);
    m_list->setObjectName(QStringLiteral("wrongList"));
    m_list->setAccessibleName(tr("What is wrong, one by one"));
    m_list->setFocusPolicy(Qt::StrongFocus); // scrolled by keys
    m_list->column()->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
    m_list->column()->setSpacing(kSpace12);
    m_card->content()->addWidget(m_list);
    page->addWidget(m_card, 1);
}

void WrongPlace::makeActs(QVBoxLayout& page) {
    auto* acts = new QWidget(this);
    auto* flow = new FlowLayout(acts, kSpace8);
    const auto add = [&](const QString& words, const char* icon, Button::Kind kind, const char* name,
                         const QKeySequence& key, auto&& then) {
        auto* button = new Button(words, QString::fromLatin1(icon), kind, acts);
        button->setObjectName(QString::fromLatin1(name));
        button->setKey(key);
        connect(button, &QAbstractButton::clicked, this, then);
        flow->addWidget(button);
        return button;
    };
    const auto errand = [this](Errand which) { return [this, which] { emit desk().errandAsked(which); }; };
    m_mend = add(tr("Mend the shop file"), "tick", Button::Kind::Primary, "wrongMend",
                 QKeySequence(Qt::Key_M), errand(Errand::MendFile));
    m_goOn = add(tr("Go on without them"), "chevron", Button::Kind::Plain, "wrongGoOn",
                 QKeySequence(Qt::Key_G), [this] { emit setAsideAsked(); });
    add(tr("Check the file"), "search", Button::Kind::Plain, "wrongCheck", QKeySequence(Qt::Key_C),
        errand(Errand::CheckFile));
    add(tr("Back up"), "shelf-away", Button::Kind::Plain, "wrongBackUp", QKeySequence(Qt::Key_B),
        errand(Errand::BackUp));
    add(tr("Put back a backup"), "undo", Button::Kind::Plain, "wrongPutBack", QKeySequence(Qt::Key_P),
        errand(Errand::PutBackBackup));
    add(tr("Save what can be saved"), "shelf-away", Button::Kind::Plain, "wrongSave", QKeySequence(Qt::Key_S),
        errand(Errand::SaveWhatCanBe));
    add(tr("Open another shop"), "order-book", Button::Kind::Plain, "wrongOpenAnother",
        QKeySequence(Qt::Key_O), errand(Errand::OpenAnother));
    page.addWidget(acts);
}

void WrongPlace::set(const WhatIsWrong& wrong) {
    m_wrong = wrong;
    if (isUnreadable())
        m_lead->set(
            Tone::Held, tr("This shop cannot be read."),
            tr("Nothing is lost by waiting: the file stays as it is. “Mend the shop file” makes parts "
               "of it that are missing again, “Put back a backup” makes the shop what it was, and “Save "
               "what can be saved” brings what is left into a new file."));
    else
        m_lead->set(Tone::Held,
                    tr("Something in the shop file is not as it should be.|"
                       "%n things in the shop file are not as they should be.",
                       nullptr, howMany(wrong.count())),
                    tr("What cannot be read is left out, and nothing can be done with it; all else goes on. "
                       "“Mend the shop file” writes rows again as their history has them. What that cannot "
                       "put right is in an earlier backup: “Put back a backup” shows what it would take "
                       "away."));
    m_goOn->setVisible(!isUnreadable());
    fillList();
    m_card->setCount(QString::number(wrong.count()));
    emit subtitleChanged();
}

void WrongPlace::fillList() {
    QVBoxLayout& list = *m_list->column();
    while (QLayoutItem* item = list.takeAt(0)) {
        delete item->widget();
        delete item;
    }
    if (isUnreadable())
        addEntry(list, words(m_wrong.unreadable), {});
    std::size_t shown = 0;
    for (const UnreadRow& row : m_wrong.rows)
        if (shown++ < kMostShown)
            addEntry(list, words(row.what), words(oneAfterTheOther(row.why, row.leftOut)));
    for (const Sentence& sentence : m_wrong.sentences)
        if (shown++ < kMostShown)
            addEntry(list, words(sentence), {});
    if (shown > kMostShown)
        addEntry(list, tr("And %1 more.").arg(shown - kMostShown), {});
    list.addStretch();
}

void WrongPlace::addEntry(QVBoxLayout& list, const QString& what, const QString& why) {
    if (list.count() > 0)
        list.addWidget(new ThreadLine);
    auto* entry = new QWidget;
    auto* lines = new QVBoxLayout(entry);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpace4);
    lines->addWidget((new Label(what, Type::BodyStrong))->wrapped());
    if (!why.isEmpty())
        lines->addWidget((new Label(why, Type::Body, &Tokens::ink2))->wrapped());
    list.addWidget(entry);
}

QString WrongPlace::subtitle() const {
    if (isUnreadable())
        return tr("nothing can be read");
    return tr("%n thing|%n things", nullptr, howMany(m_wrong.count()));
}

void WrongPlace::opened() {
    if (m_mend->isVisible())
        m_mend->setFocus();
    else
        setFocus();
}

} // namespace holdfast::app
