// The times of a cook (at temperature, food on, food off, fire out) and one-tap notes.
#pragma once

#include "views/page.h"

class QLineEdit;
class QVBoxLayout;

namespace rickyard::views {

class ConfirmButton;

class MarksBar : public QWidget
{
    Q_OBJECT

public:
    MarksBar(PageContext &context, domain::RecordId cook, QWidget *parent = nullptr);
    void refresh();

Q_SIGNALS:
    // After it is in the file. `link` is what Undo takes back; id 0 for a mark.
    void done(const QString &text, const rickyard::domain::Link &link);
    void finished();
    void refused(const QString &message);

private:
    void buildMarks(QVBoxLayout *column);
    void buildNotes(QVBoxLayout *column);
    void mark(commands::Verbs::Mark mark, const QString &name);
    void note(domain::NoteKind kind, const QString &name, const QString &text);

    PageContext &m_context;
    domain::RecordId m_cook;
    QVector<ConfirmButton *> m_marks; // in the order of Verbs::Mark
    QLineEdit *m_text = nullptr;
};

} // namespace rickyard::views
