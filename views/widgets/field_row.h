// One field of a form: label above, editor, and a line below that is help until something is
// refused, and then says what is wrong and what is expected.
#pragma once

#include <QWidget>

namespace rickyard::views {

class TextLabel;

class FieldRow : public QWidget
{
    Q_OBJECT

public:
    // Takes the editor as a child; it gets the label as buddy and, if it has none, as
    // accessible name.
    FieldRow(const QString &label, QWidget *editor, QWidget *parent = nullptr);

    void setHelp(const QString &help);
    // An empty message means the content is accepted again. The input itself is never touched.
    void setProblem(const QString &message);
    void clearProblem() { setProblem(QString()); }
    bool hasProblem() const { return !problem_.isEmpty(); }
    QString message() const;
    // Adds "optional" after the label.
    void setOptional(bool optional);
    QWidget *editor() const { return editor_; }
    QString label() const { return name_; }

private:
    void showMessage();

    QString name_;
    QString help_;
    QString problem_;
    TextLabel *label_;
    QWidget *editor_;
    QWidget *mark_;
    TextLabel *message_;
};

} // namespace rickyard::views
