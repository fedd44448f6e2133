// One field's editor of any kind behind one interface; see makeEditor().
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/records/books.h"

#include <QWidget>

namespace rickyard::views {

// What an editor holds: a value, or what is wrong with the text; and the text as typed.
struct Typed {
    domain::Value value;
    QString problem;
    QString text; // with its unit, kept beside the value
};

class FieldEditor : public QWidget
{
    Q_OBJECT

public:
    using QWidget::QWidget;
    virtual void setValue(const domain::Value &value) = 0;
    [[nodiscard]] virtual Typed typed() const = 0;
    // The widget that takes the keys, for the label's buddy and the invalid mark.
    [[nodiscard]] virtual QWidget *inner() const = 0;

Q_SIGNALS:
    void edited();
};

// `books` is asked again whenever choices are shown.
using BooksSource = std::function<const domain::Books &()>;
FieldEditor *makeEditor(const domain::FieldSpec &field, const BooksSource &books, QWidget *parent);

} // namespace rickyard::views
