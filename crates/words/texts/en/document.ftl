### Document

