// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One of many, each with what there is to say of it in full below its name: films with their fitness, loads
// with their times. Arrows move and choose at once, letters find one by any word of its name.

#include "app/theme/tokens.h"
#include "app/widgets/type_ahead.h"

#include <QAbstractListModel>
#include <QListView>
#include <QStyledItemDelegate>
#include <QVector>

namespace holdfast::app {

struct Option {
    QString text;
    QString second = {};   // wrapped, never cut
    QString iconName = {}; // before the second line
    Tone tone = Tone::Plain;
    QColor shade = {}; // of film or cloth
};

class OptionModel : public QAbstractListModel {
    Q_OBJECT

public:
    using QAbstractListModel::QAbstractListModel;

    void setOptions(const QVector<Option>& options);
    const Option& option(int row) const { return m_options[row]; }

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    QVector<Option> m_options;
};

class OptionDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    explicit OptionDelegate(QListView* view);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    QListView* m_view;
};

class OptionList : public QListView {
    Q_OBJECT

public:
    explicit OptionList(const QString& accessibleName, QWidget* parent = nullptr);

    void setOptions(const QVector<Option>& options, int chosen = -1); // emits nothing
    int chosenAt() const { return currentIndex().row(); }             // -1 for none
    void setChosen(int at);                                           // emits nothing
    QString chosenText() const;                                       // empty for none
    void choose(const QString& text);                                 // as the person does, if it is there
    void keyboardSearch(const QString& typed) override;               // any word of a name

    // As high as all of them, where they are few: the form scrolls, not the list.
    void showAll();

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void chosen(int at);

protected:
    // What is typed looks for a row; it is nobody's shortcut while the list has the keyboard.
    bool event(QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    OptionModel* m_model = nullptr;
    TypeAhead m_typeAhead;
    bool m_showsAll = false;
    bool m_isQuiet = false;
};

} // namespace holdfast::app
